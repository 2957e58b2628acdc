package dev.isoline.resources;

import dev.isoline.ledger.ResourceTable.IndexEntry;
import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.IntStream;
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
 * One search parameter of one resource type (FHIR R4, 3.1.1.4). The index is searched for equal
 * values only, so a string stands in it with each of its beginnings, and a date at each precision.
 */
record SearchParameter<R extends Resource>(
        Class<R> type, String name, Kind kind, Function<R, Stream<IndexEntry>> values) {

    enum Kind {
        ID,
        TOKEN,
        REFERENCE,
        STRING,
        DATE
    }

    /** Name of the entry that holds a string as written, for the modifier {@code :exact}. */
    static final String EXACT = ":exact";

    private static final int LONGEST_BEGINNING = 64;

    static <R extends Resource> SearchParameter<R> token(
            Class<R> type, String name, Function<R, List<? extends Base>> elements) {
        return new SearchParameter<>(
                type, name, Kind.TOKEN, r -> elements.apply(r).stream().flatMap(e -> of(name, e)));
    }

    static <R extends Resource> SearchParameter<R> reference(
            Class<R> type, String name, Function<R, List<Reference>> references) {
        return new SearchParameter<>(
                type,
                name,
                Kind.REFERENCE,
                r -> references.apply(r).stream().flatMap(e -> of(name, e)));
    }

    static <R extends Resource> SearchParameter<R> string(
            Class<R> type, String name, Function<R, Stream<String>> strings) {
        return new SearchParameter<>(
                type,
                name,
                Kind.STRING,
                r -> strings.apply(r).filter(Objects::nonNull).flatMap(s -> beginnings(name, s)));
    }

    static <R extends Resource> SearchParameter<R> date(
            Class<R> type, String name, Function<R, DateType> date) {
        return new SearchParameter<>(
                type, name, Kind.DATE, r -> precisions(name, date.apply(r).getValueAsString()));
    }

    Stream<IndexEntry> entries(Resource resource) {
        return values.apply(type.cast(resource));
    }

    /** Without case, accents and blanks at the ends (FHIR R4, 3.1.1.4.10). */
    static String normal(String text) {
        String plain =
                Normalizer.normalize(text.strip(), Normalizer.Form.NFD).replaceAll("\\p{M}", "");
        String lower = plain.toLowerCase(Locale.ROOT);
        return lower.substring(0, Math.min(lower.length(), LONGEST_BEGINNING));
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

    private static Stream<IndexEntry> beginnings(String name, String text) {
        String normal = normal(text);
        return Stream.concat(
                Stream.of(new IndexEntry(name + EXACT, "", text)),
                IntStream.rangeClosed(1, normal.length())
                        .mapToObj(end -> new IndexEntry(name, "", normal.substring(0, end))));
    }

    private static Stream<IndexEntry> precisions(String name, String date) {
        return date == null
                ? Stream.empty()
                : IntStream.of(4, 7, 10)
                        .filter(length -> length <= date.length())
                        .mapToObj(length -> new IndexEntry(name, "", date.substring(0, length)));
    }
}
