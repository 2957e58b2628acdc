package dev.isoline.resources;

import ca.uhn.fhir.rest.param.ParameterUtil;
import dev.isoline.ledger.ResourceTable.Criterion;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Search conditions as they stand in a URL (FHIR R4, 3.1.1.4), turned into criteria. */
public final class SearchCondition {

    private SearchCondition() {}

    /**
     * A search URL's query, such as {@code identifier=system|value&birthdate=1950-01-01}.
     *
     * @throws ContentError on a parameter, modifier or form of value that is not supported
     */
    public static List<Criterion> parse(String type, String query) {
        var criteria = new ArrayList<Criterion>();
        for (String pair : query.split("&")) {
            int equals = pair.indexOf('=');
            if (equals < 1 || equals == pair.length() - 1) {
                throw refused(type, "A search condition has the form parameter=value.");
            }
            criteria.add(
                    of(
                            type,
                            decoded(pair.substring(0, equals)),
                            decoded(pair.substring(equals + 1))));
        }
        return criteria;
    }

    /** One parameter with its modifier, and its value: alternatives are separated by commas. */
    public static Criterion of(String type, String parameter, String value) {
        int colon = parameter.indexOf(':');
        String name = colon < 0 ? parameter : parameter.substring(0, colon);
        String modifier = colon < 0 ? "" : parameter.substring(colon);
        List<String> values = split(value, ',');
        if (!SearchIndex.has(type, name)) {
            throw refused(
                    type,
                    "Unknown search parameter; supported are " + SearchIndex.names(type) + ".");
        }
        var known = SearchIndex.parameter(type, name);
        if (modifier.equals(SearchParameter.EXACT)
                && known.filter(p -> p.kind() == SearchParameter.Kind.STRING).isPresent()) {
            return new Criterion(name + modifier, null, unescaped(values));
        }
        if (!modifier.isEmpty()) {
            throw refused(type, "The modifier of search parameter " + name + " is not supported.");
        }
        return known.map(p -> of(type, p, values))
                .orElseGet(() -> new Criterion(Criterion.ID, null, unescaped(values)));
    }

    private static Criterion of(String type, SearchParameter<?> known, List<String> values) {
        return switch (known.kind()) {
            case TOKEN -> tokens(type, known.name(), values);
            case REFERENCE -> references(type, known, values);
            case STRING ->
                    new Criterion(
                            known.name(),
                            null,
                            unescaped(values).stream().map(SearchParameter::normal).toList(),
                            true);
            case DATE -> dates(type, known.name(), values);
        };
    }

    private static Criterion tokens(String type, String name, List<String> values) {
        var systems = new ArrayList<String>();
        var codes = new ArrayList<String>();
        for (String token : values) {
            List<String> parts = split(token, '|');
            int bar = token.indexOf('|');
            systems.add(bar < 0 ? null : parts.size() > 1 ? unescaped(parts.get(0)) : "");
            codes.add(unescaped(parts.get(parts.size() - 1)));
            if (bar >= 0 && token.endsWith("|")) {
                throw refused(type, "Search by " + name + " needs a value after the system.");
            }
        }
        return alternatives(type, name, systems, codes);
    }

    private static Criterion references(
            String type, SearchParameter<?> known, List<String> values) {
        var types = new ArrayList<String>();
        var ids = new ArrayList<String>();
        for (String reference : values) {
            String[] parts = reference.split("/");
            String target = known.isPatient() ? "Patient" : null;
            types.add(parts.length > 1 ? parts[parts.length - 2] : target);
            ids.add(parts[parts.length - 1]);
        }
        return alternatives(type, known.entry(), types, ids);
    }

    private static Criterion dates(String type, String name, List<String> values) {
        var dates = values.stream().map(d -> d.startsWith("eq") ? d.substring(2) : d).toList();
        if (!dates.stream().allMatch(d -> d.matches("\\d{4}(-\\d{2}(-\\d{2})?)?"))) {
            throw refused(type, "Search by " + name + " takes a date and no prefix but eq.");
        }
        return new Criterion(name, null, dates, true);
    }

    private static Criterion alternatives(
            String type, String name, List<String> systems, List<String> values) {
        if (systems.stream().distinct().count() > 1) {
            throw refused(type, "Alternatives of " + name + " must have the same system or type.");
        }
        return new Criterion(name, systems.get(0), values);
    }

    /** A backslash takes the separator its meaning (FHIR R4, 3.1.1.4.0.1). */
    private static List<String> split(String value, char separator) {
        return List.of(value.split("(?<!\\\\)" + Pattern.quote("" + separator), -1));
    }

    private static List<String> unescaped(List<String> values) {
        return values.stream().map(SearchCondition::unescaped).toList();
    }

    private static String unescaped(String value) {
        return ParameterUtil.unescape(value);
    }

    private static String decoded(String text) {
        return URLDecoder.decode(text, StandardCharsets.UTF_8);
    }

    private static ContentError refused(String type, String text) {
        return new ContentError(Problem.error(Problem.Kind.VALUE, type, text));
    }
}
