package dev.isoline.cli;

import dev.isoline.ecg.Damage;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What the command line of {@code convert} says. Not read by picocli as the other commands' are:
 * its model takes longer to set up than all else before the first sample.
 *
 * @param zone of the recorder's clock
 * @param start for recordings that name none
 * @param progress whether to tell how far it has read, also where no terminal is
 * @param damage what is done with a recording that is short or damaged
 */
record ConvertArguments(
        Path recording,
        Path order,
        Path out,
        ZoneId zone,
        Optional<LocalDateTime> start,
        boolean progress,
        Damage damage) {

    static final String USAGE =
            """
            usage: isoline convert RECORDING --order FILE --out DIR [--zone ZONE] [--start TIME]
                                  [--salvage] [--progress]
            Writes a recording as DICOM ECG objects, a report as a DICOM Encapsulated PDF object.

              RECORDING      recording (docs/formats.md), WFDB header, folder or .zip; or a report in PDF
              --order FILE   FHIR R4 Bundle with ServiceRequest, Patient, Practitioner, as JSON
              --out DIR      folder for the objects, made if absent
              --zone ZONE    time zone of the recorder's clock; this machine's by default
              --start TIME   local start such as 2026-10-24T09:30:00, for recordings that name none
              --salvage      reads what is readable of a short or damaged recording
              --progress     tells each second how far it has read, also where no terminal is
              -h, --help     this text
            """;

    private static final String PROGRESS = "--progress";
    private static final String RECORDING = "RECORDING";
    private static final String SALVAGE = "--salvage";
    private static final Set<String> FLAGS = Set.of(PROGRESS, SALVAGE);
    private static final Set<String> OPTIONS = Set.of("--order", "--out", "--zone", "--start");

    /** A command line that cannot be carried out. */
    static final class Fault extends Exception {

        private static final long serialVersionUID = 1L;

        Fault(String text) {
            super(text);
        }
    }

    /** Reads {@code --name value}, {@code --name=value} and the recording, in any order. */
    static ConvertArguments of(String... words) throws Fault {
        var given = new HashMap<String, String>();
        for (int at = 0; at < words.length; at++) {
            String word = words[at];
            int equals = word.indexOf('=');
            if (!word.startsWith("-")) {
                put(given, RECORDING, word);
            } else if (FLAGS.contains(word)) {
                put(given, word, word);
            } else if (equals >= 0) {
                put(given, option(word.substring(0, equals)), word.substring(equals + 1));
            } else if (at + 1 < words.length) {
                put(given, option(word), words[++at]);
            } else {
                throw new Fault("The option " + option(word) + " needs a value.");
            }
        }
        return of(given);
    }

    private static String option(String name) throws Fault {
        if (!OPTIONS.contains(name)) {
            throw new Fault("There is no option " + name + ".");
        }
        return name;
    }

    private static void put(Map<String, String> given, String name, String value) throws Fault {
        if (given.put(name, value) != null) {
            throw new Fault(name + " is given twice.");
        }
    }

    private static ConvertArguments of(Map<String, String> given) throws Fault {
        String zone = given.get("--zone");
        String start = given.get("--start");
        try {
            return new ConvertArguments(
                    Path.of(required(given, RECORDING)),
                    Path.of(required(given, "--order")),
                    Path.of(required(given, "--out")),
                    zone == null ? ZoneId.systemDefault() : ZoneId.of(zone),
                    Optional.ofNullable(start).map(LocalDateTime::parse),
                    given.containsKey(PROGRESS),
                    given.containsKey(SALVAGE) ? Damage.SALVAGE : Damage.REFUSE);
        } catch (DateTimeException e) {
            throw new Fault("The time zone or the start cannot be read: " + e.getMessage() + ".");
        }
    }

    private static String required(Map<String, String> given, String name) throws Fault {
        String value = given.get(name);
        if (value == null) {
            throw new Fault(name + " is missing.");
        }
        return value;
    }
}
