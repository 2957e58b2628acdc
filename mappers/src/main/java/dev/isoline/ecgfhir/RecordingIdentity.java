package dev.isoline.ecgfhir;

import dev.isoline.ecg.RecordingHeader.Identity;
import dev.isoline.order.Problem;
import dev.isoline.order.Problem.Kind;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Enumerations.AdministrativeGender;
import org.hl7.fhir.r4.model.HumanName;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.ServiceRequest;

/**
 * Whether a recording belongs to an order: what the file says about patient and order is compared
 * with what the order says. What the file leaves out is not compared; nothing is corrected.
 */
public final class RecordingIdentity {

    private RecordingIdentity() {}

    /** One problem per item that differs, without its value; empty when nothing contradicts. */
    public static List<Problem> compare(Identity file, ServiceRequest order, Patient patient) {
        var problems = new ArrayList<Problem>();
        if (!file.patientId().isEmpty() && !holds(patient.getIdentifier(), file.patientId())) {
            problems.add(differs("Patient.identifier", "patient identifier"));
        }
        if (!sameName(file, patient)) {
            problems.add(differs("Patient.name", "patient name"));
        }
        if (!sameBirthDate(file, patient)) {
            problems.add(differs("Patient.birthDate", "birth date"));
        }
        if (!sameSex(file, patient)) {
            problems.add(differs("Patient.gender", "sex"));
        }
        if (!file.orderNumber().isEmpty() && !holds(order.getIdentifier(), file.orderNumber())) {
            problems.add(differs("ServiceRequest.identifier", "order number"));
        }
        return problems;
    }

    private static Problem differs(String location, String item) {
        return Problem.error(
                Kind.CONFLICT,
                location,
                "The recording names another " + item + " than the order.");
    }

    private static boolean holds(List<Identifier> identifiers, String value) {
        return identifiers.stream().anyMatch(identifier -> value.equals(identifier.getValue()));
    }

    /** Writers order the parts of a name differently and leave parts out; none may be foreign. */
    private static boolean sameName(Identity file, Patient patient) {
        Set<String> inFile = words(Stream.of(file.family(), file.given()));
        return inFile.isEmpty()
                || !patient.hasName()
                || patient.getName().stream().anyMatch(name -> agree(inFile, words(parts(name))));
    }

    private static boolean agree(Set<String> one, Set<String> other) {
        return one.containsAll(other) || other.containsAll(one);
    }

    private static Stream<String> parts(HumanName name) {
        return Stream.concat(
                Stream.of(name.hasFamily() ? name.getFamily() : ""),
                name.getGiven().stream().map(given -> given.getValueNotNull()));
    }

    private static Set<String> words(Stream<String> parts) {
        return parts.map(part -> Normalizer.normalize(part, Normalizer.Form.NFD))
                .map(part -> part.replaceAll("\\p{M}", "").toUpperCase(Locale.ROOT))
                .flatMap(part -> Arrays.stream(part.split("[^\\p{L}\\p{N}]+")))
                .filter(word -> !word.isEmpty())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** The shorter of two dates decides: 1961-04 does not contradict 1961-04-12. */
    private static boolean sameBirthDate(Identity file, Patient patient) {
        String known = patient.hasBirthDate() ? patient.getBirthDateElement().asStringValue() : "";
        return known.startsWith(file.birthDate()) || file.birthDate().startsWith(known);
    }

    private static boolean sameSex(Identity file, Patient patient) {
        AdministrativeGender known = patient.getGender();
        return switch (file.sex()) {
            case "M" -> known != AdministrativeGender.FEMALE;
            case "F" -> known != AdministrativeGender.MALE;
            default -> true;
        };
    }
}
