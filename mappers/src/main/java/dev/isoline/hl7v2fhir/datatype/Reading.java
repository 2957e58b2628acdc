package dev.isoline.hl7v2fhir.datatype;

import java.time.ZoneId;
import java.util.function.BiConsumer;

/**
 * How to read the fields of one message: whose identifiers, which time zone, and where to say what
 * could not be carried.
 */
public final class Reading {

    private final IdentifierSystems systems;
    private final ZoneId zone;
    private final BiConsumer<String, String> notes;
    private String field = "";

    /**
     * @param notes takes the field, such as {@code PID-5.7}, and what became of it
     */
    public Reading(IdentifierSystems systems, ZoneId zone, BiConsumer<String, String> notes) {
        this.systems = systems;
        this.zone = zone;
        this.notes = notes;
    }

    public IdentifierSystems systems() {
        return systems;
    }

    public ZoneId zone() {
        return zone;
    }

    /** The field the next notes are about. */
    public Reading at(String name) {
        field = name;
        return this;
    }

    /** The field as a whole could not be carried as it stood. */
    public void note(String text) {
        notes.accept(field, text);
    }

    /** One component could not be carried as it stood. */
    public void note(int component, String text) {
        notes.accept(field + "." + component, text);
    }
}
