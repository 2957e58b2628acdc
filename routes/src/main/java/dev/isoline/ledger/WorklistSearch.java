package dev.isoline.ledger;

import java.util.Optional;

/**
 * What narrows a search of {@code worklist}; the rows found may be more than match.
 *
 * @param from earliest start, {@code yyyymmddhhmmss}; 0 for none
 * @param to latest start; {@link Long#MAX_VALUE} for none
 * @param name beginning of the name in its matching form; empty: any name
 * @param within characters in the name's matching form; empty: any
 * @param station AE title, to which entries for any station count
 */
public record WorklistSearch(
        long from,
        long to,
        String name,
        String within,
        Optional<String> patientId,
        Optional<String> accession,
        Optional<String> station) {

    /** Characters of a name after which looking by name beats looking by start. */
    private static final int TELLING_NAME = 3;

    /** Everything. */
    public static final WorklistSearch ALL =
            new WorklistSearch(
                    0,
                    Long.MAX_VALUE,
                    "",
                    "",
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty());

    /** The column by whose index rows are found, and in whose order they come. */
    enum Path {
        ACCESSION("accession"),
        PATIENT("patient_id"),
        NAME("name"),
        START("start");

        final String column;

        Path(String column) {
            this.column = column;
        }
    }

    Path path() {
        if (accession.isPresent()) {
            return Path.ACCESSION;
        }
        if (patientId.isPresent()) {
            return Path.PATIENT;
        }
        boolean bounded = from > 0 && to < Long.MAX_VALUE;
        boolean named = !name.isEmpty() || !within.isEmpty();
        return name.length() >= TELLING_NAME || named && !bounded ? Path.NAME : Path.START;
    }
}
