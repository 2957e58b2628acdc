package dev.isoline.fhirdicom;

import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** VR PN, PS3.5 6.2.1: family^given^middle^prefix^suffix. */
public final class PersonNameText {

    private PersonNameText() {}

    /**
     * @param given the first is the given name, the others are middle names
     * @param location of the name, for the problem
     * @throws ContentError when a part holds what would move the rest into another component
     */
    public static String of(
            String family,
            List<String> given,
            List<String> prefix,
            List<String> suffix,
            String location) {
        int first = Math.min(1, given.size());
        var components =
                Stream.of(
                        family,
                        String.join(" ", given.subList(0, first)),
                        String.join(" ", given.subList(first, given.size())),
                        String.join(" ", prefix),
                        String.join(" ", suffix));
        return components
                .map(component -> checked(component, location))
                .collect(Collectors.joining("^"))
                .replaceFirst("\\^+$", "");
    }

    private static String checked(String component, String location) {
        if (component.matches("(?s).*[\\^=\\\\\\p{Cntrl}].*")) {
            throw new ContentError(
                    Problem.error(
                            Problem.Kind.VALUE,
                            location,
                            "A name holds ^, =, \\ or a control character, which a DICOM name"
                                    + " cannot carry."));
        }
        return component;
    }
}
