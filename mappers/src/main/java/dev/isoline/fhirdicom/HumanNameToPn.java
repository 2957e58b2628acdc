package dev.isoline.fhirdicom;

import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.HumanName;
import org.hl7.fhir.r4.model.HumanName.NameUse;
import org.hl7.fhir.r4.model.PrimitiveType;
import org.hl7.fhir.r4.model.StringType;

/** HumanName (FHIR R4) to VR PN, PS3.5 6.2.1: family^given^middle^prefix^suffix. */
final class HumanNameToPn {

    private HumanNameToPn() {}

    /** The official name, else the first one. */
    static String map(List<HumanName> names, String location) {
        return names.stream()
                .filter(name -> name.getUse() == NameUse.OFFICIAL)
                .findFirst()
                .or(() -> names.stream().findFirst())
                .map(name -> pn(name, location))
                .orElse("");
    }

    private static String pn(HumanName name, String location) {
        List<StringType> given = name.getGiven();
        var components =
                Stream.of(
                        Objects.requireNonNullElse(name.getFamily(), ""),
                        joined(given.subList(0, Math.min(1, given.size()))),
                        joined(given.subList(Math.min(1, given.size()), given.size())),
                        joined(name.getPrefix()),
                        joined(name.getSuffix()));
        String pn =
                components
                        .map(component -> checked(component, location))
                        .collect(Collectors.joining("^"));
        return pn.replaceFirst("\\^+$", "");
    }

    private static String joined(List<StringType> parts) {
        return parts.stream()
                .map(PrimitiveType::getValue)
                .filter(Objects::nonNull)
                .collect(Collectors.joining(" "));
    }

    /** The delimiters of PN would move what follows into another component. */
    private static String checked(String component, String location) {
        if (component.matches("(?s).*[\\^=\\\\\\p{Cntrl}].*")) {
            throw new ContentError(
                    Problem.error(
                            Problem.Kind.VALUE,
                            location,
                            "A name holds ^, =, \\ or a control character, which a DICOM name cannot"
                                    + " carry."));
        }
        return component;
    }
}
