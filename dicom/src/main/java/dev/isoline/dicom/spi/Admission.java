package dev.isoline.dicom.spi;

import java.util.Set;

/**
 * Which associations a listener accepts; the others are rejected with their reason, PS3.8 table
 * 9-21.
 *
 * @param callers calling AE titles it knows; empty where anybody may call
 * @param called titles it answers to beside its own
 * @param anyCalled true where it answers to every called AE title, not only to its own
 * @param associations open at once; one more is rejected as transient, "local limit exceeded"
 */
public record Admission(
        Set<AeTitle> callers, Set<AeTitle> called, boolean anyCalled, int associations) {

    /** Every caller that knows our title, 50 at once. */
    public static final Admission ANYBODY = new Admission(Set.of(), false, 50);

    public Admission {
        callers = Set.copyOf(callers);
        called = Set.copyOf(called);
        if (associations < 1) {
            throw new IllegalArgumentException("a listener needs at least one association");
        }
    }

    /** One that answers to no other title, or to every one. */
    public Admission(Set<AeTitle> callers, boolean anyCalled, int associations) {
        this(callers, Set.of(), anyCalled, associations);
    }

    /** True where the caller may call. */
    public boolean knows(AeTitle calling) {
        return callers.isEmpty() || callers.contains(calling);
    }
}
