package dev.isoline.conformance.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;

/** Records as JSON for people and programs to read. */
final class Json {

    private static final ObjectMapper MAPPER =
            new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    private Json() {}

    static String pretty(Object value) throws JsonProcessingException {
        return MAPPER.writeValueAsString(value);
    }
}
