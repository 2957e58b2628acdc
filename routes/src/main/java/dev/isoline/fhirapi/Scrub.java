package dev.isoline.fhirapi;

import dev.isoline.resources.FhirJson;
import java.util.HashSet;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Takes what a request said out of the texts about it: they may be logged and forwarded. */
final class Scrub {

    private static final String HIDDEN = "…";

    /** JSON strings and XML attributes look the same; property names are caught too, see below. */
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"(\\s*:)?");

    private static final Pattern ESCAPED = Pattern.compile("\\\\u([0-9A-Fa-f]{4})");
    private static final Pattern QUOTED = Pattern.compile("'([^']*)'|\"([^\"]*)\"");
    private static final Pattern OURS = Pattern.compile("[A-Za-z]+([.:/-][A-Za-z0-9\\[\\]]+)*");
    private static final Pattern PUBLISHED =
            Pattern.compile("http://(hl7|terminology\\.hl7)\\.org/.*");

    private static final Set<String> TYPES = FhirJson.CONTEXT.getResourceTypes();

    /** Shorter values would cut words of the text; where quoted they are hidden as well. */
    private static final int SHORTEST_UNQUOTED = 4;

    private final Set<String> values;

    private Scrub(Set<String> values) {
        this.values = values;
    }

    static Scrub of(String body) {
        var values = new HashSet<String>();
        Matcher literal = LITERAL.matcher(body);
        while (literal.find()) {
            if (literal.group(2) == null) {
                values.add(unescaped(literal.group(1)));
            }
        }
        return new Scrub(values);
    }

    String text(String message) {
        String bare = QUOTED.matcher(message).replaceAll(this::quoted);
        for (String value : values) {
            if (value.length() >= SHORTEST_UNQUOTED && !published(value)) {
                bare = bare.replaceAll("(?<!\\w)" + Pattern.quote(value) + "(?!\\w)", HIDDEN);
            }
        }
        return bare;
    }

    private String quoted(MatchResult match) {
        String inner = match.group(1) == null ? match.group(2) : match.group(1);
        boolean shown =
                published(inner) || OURS.matcher(inner).matches() && !values.contains(inner);
        return Matcher.quoteReplacement(shown ? match.group() : "'" + HIDDEN + "'");
    }

    private static boolean published(String value) {
        return PUBLISHED.matcher(value).matches() || TYPES.contains(value);
    }

    private static String unescaped(String literal) {
        String characters =
                ESCAPED.matcher(literal)
                        .replaceAll(
                                m ->
                                        Matcher.quoteReplacement(
                                                "" + (char) Integer.parseInt(m.group(1), 16)));
        return characters.replaceAll("\\\\(.)", "$1");
    }
}
