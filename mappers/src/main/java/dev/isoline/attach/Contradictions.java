package dev.isoline.attach;

import dev.isoline.order.Problem;
import dev.isoline.order.Requirement;
import dev.isoline.order.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.r4.model.Enumerations.AdministrativeGender;
import org.hl7.fhir.r4.model.Patient;

/**
 * Two accounts of a patient of one identifier that cannot both be true. Such a patient may be two
 * people, so a person has to look; nothing is corrected.
 */
public final class Contradictions {

    private Contradictions() {}

    /** One problem per item that differs; empty when the accounts agree or one is silent. */
    public static List<Problem> between(Patient stored, Patient incoming, Vocabulary vocabulary) {
        var problems = new ArrayList<Problem>();
        if (birthDatesDiffer(stored, incoming)) {
            problems.add(problem(Requirement.BIRTH_DATE, vocabulary, "birth date"));
        }
        if (sexesDiffer(stored.getGender(), incoming.getGender())) {
            problems.add(problem(Requirement.SEX, vocabulary, "administrative sex"));
        }
        return problems;
    }

    /** A year or a month does not contradict a day in it: the shorter text begins the longer. */
    private static boolean birthDatesDiffer(Patient stored, Patient incoming) {
        String one = stored.getBirthDateElement().getValueAsString();
        String other = incoming.getBirthDateElement().getValueAsString();
        return one != null && other != null && !one.startsWith(other) && !other.startsWith(one);
    }

    private static boolean sexesDiffer(AdministrativeGender one, AdministrativeGender other) {
        return isKnown(one) && isKnown(other) && one != other;
    }

    private static boolean isKnown(AdministrativeGender sex) {
        return sex != null && sex != AdministrativeGender.UNKNOWN;
    }

    private static Problem problem(Requirement item, Vocabulary vocabulary, String what) {
        return Problem.error(
                Problem.Kind.CONFLICT,
                item.location(vocabulary),
                "Another "
                        + what
                        + " is on record for the same patient identifier; a person has to decide.");
    }
}
