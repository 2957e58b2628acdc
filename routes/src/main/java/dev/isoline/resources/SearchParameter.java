package dev.isoline.resources;

import dev.isoline.ledger.ResourceTable.IndexEntry;
import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Base;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateType;
import org.hl7.fhir.r4.model.Enumeration;
import org.hl7.fhir.r4.model.IdType;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;

/**
 * One search parameter of one resource type (FHIR R4, 3.1.1.4).
 *
 * @param entry name of its index entries, which two parameters may share
 */
record SearchParameter<R extends Resource>(
        Class<R> type,
        String name,
        String entry,
        Kind kind,
        Function<R, Stream<IndexEntry>> values) {

    enum Kind {
        TOKEN,
        REFERENCE,
        STRING,
        DATE
    }

    /** Name of the entry that holds a string as written, for the modifier {@code :exact}. */
    static final String EXACT = ":exact";

    private static final int LONGEST = 64;

    static <R extends Resource> SearchParameter<R> token(
            Class<R> type, String name, Function<R, List<? extends Base>> elements) {
        return new SearchParameter<>(
                type,
                name,
                name,
                Kind.TOKEN,
                r -> elements.apply(r).stream().flatMap(e -> of(name, e)));
    }

    static <R extends Resource> SearchParameter<R> reference(
            Class<R> type, String name, Function<R, List<Reference>> references) {
        return new SearchParameter<>(
                type,
                name,
                name,
                Kind.REFERENCE,
                r -> references.apply(r).stream().flatMap(e -> of(name, e)));
    }

    /** A reference to a patient that is indexed under its wider name already. */
    static <R extends Resource> SearchParameter<R> patient(Class<R> type, String wider) {
        return new SearchParameter<>(type, "patient", wider, Kind.REFERENCE, r -> Stream.empty());
    }

    static <R extends Resource> SearchParameter<R> string(
            Class<R> type, String name, Function<R, Stream<String>> strings) {
        return new SearchParameter<>(
                type,
                name,
                name,
                Kind.STRING,
                r -> strings.apply(r).filter(Objects::nonNull).flatMap(s -> spellings(name, s)));
    }

    static <R extends Resource> SearchParameter<R> date(
            Class<R> type, String name, Function<R, DateType> date) {
        return new SearchParameter<>(
                type,
                name,
                name,
                Kind.DATE,
                r -> entry(name, null, date.apply(r).getValueAsString()));
    }

    /** Whether a bare id in a condition is one of a patient. */
    boolean isPatient() {
        return name.equals("patient") || name.equals("beneficiary");
    }

    Stream<IndexEntry> entries(Resource resource) {
        return values.apply(type.cast(resource));
    }

    /** Without case, accents and blanks at the ends (FHIR R4, 3.1.1.4.10). */
    static String normal(String text) {
        String plain =
                Normalizer.normalize(text.strip(), Normalizer.Form.NFD).replaceAll("\\p{M}", "");
        String lower = plain.toLowerCase(Locale.ROOT);
        return lower.substring(0, Math.min(lower.length(), LONGEST));
    }

    private static Stream<IndexEntry> of(String name, Base element) {
        if (element instanceof Identifier identifier) {
            return entry(name, identifier.getSystem(), identifier.getValue());
        }
        if (element instanceof Coding coding) {
            return entry(name, coding.getSystem(), coding.getCode());
        }
        if (element instanceof Enumeration<?> code) {
            return entry(name, code.getSystem(), code.getValueAsString());
        }
        IdType target = new IdType(((Reference) element).getReference());
        return entry(name, target.getResourceType(), target.getIdPart());
    }

    private static Stream<IndexEntry> entry(String name, String system, String value) {
        return value == null
                ? Stream.empty()
                : Stream.of(new IndexEntry(name, system == null ? "" : system, value));
    }

    private static Stream<IndexEntry> spellings(String name, String text) {
        return Stream.of(
                new IndexEntry(name + EXACT, "", text), new IndexEntry(name, "", normal(text)));
    }
}
