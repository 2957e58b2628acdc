package dev.isoline.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A JSON document as maps, lists and texts. The FHIR model would take some seconds to load, several
 * times as long as converting a day of ECG.
 */
record OrderJson(Map<String, Object> fields) {

    private static final int DEEPEST = 100;

    static OrderJson read(Path file) throws IOException {
        try (JsonParser parser = new JsonFactory().createParser(file.toFile())) {
            parser.nextToken();
            return of(value(parser, 0));
        }
    }

    /** Texts of a list of primitives. */
    List<String> texts(String name) {
        return list(name).stream()
                .filter(String.class::isInstance)
                .map(String.class::cast)
                .toList();
    }

    String text(String name) {
        return fields.get(name) instanceof String text ? text : "";
    }

    OrderJson object(String name) {
        return of(fields.get(name));
    }

    List<OrderJson> objects(String name) {
        return list(name).stream().map(OrderJson::of).toList();
    }

    private List<?> list(String name) {
        return fields.get(name) instanceof List<?> list ? list : List.of();
    }

    @SuppressWarnings("unchecked")
    private static OrderJson of(Object value) {
        return new OrderJson(value instanceof Map ? (Map<String, Object>) value : Map.of());
    }

    private static Object value(JsonParser parser, int depth) throws IOException {
        if (depth > DEEPEST) {
            throw new IOException("nested deeper than " + DEEPEST);
        }
        if (parser.currentToken() == JsonToken.START_OBJECT) {
            var object = new LinkedHashMap<String, Object>();
            while (parser.nextToken() == JsonToken.FIELD_NAME) {
                String name = parser.currentName();
                parser.nextToken();
                object.put(name, value(parser, depth + 1));
            }
            return object;
        }
        if (parser.currentToken() == JsonToken.START_ARRAY) {
            var list = new ArrayList<Object>();
            while (parser.nextToken() != JsonToken.END_ARRAY) {
                list.add(value(parser, depth + 1));
            }
            return list;
        }
        return parser.getText();
    }
}
