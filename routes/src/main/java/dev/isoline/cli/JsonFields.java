package dev.isoline.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter.FixedSpaceIndenter;
import java.io.IOException;
import java.io.Writer;
import java.time.Duration;
import java.util.Collection;
import java.util.Optional;

/** Fields written one after the other, so that a fortnight of minutes is never in memory. */
final class JsonFields {

    /** Writes the fields of one object. */
    interface Fields<T> {
        void write(T from) throws IOException;
    }

    private final JsonGenerator json;
    private final DefaultPrettyPrinter printer = new DefaultPrettyPrinter();

    JsonFields(Writer out) throws IOException {
        json = new JsonFactory().createGenerator(out);
        json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
        printer.indentArraysWith(DefaultIndenter.SYSTEM_LINEFEED_INSTANCE);
        json.setPrettyPrinter(printer);
    }

    void text(String name, String value) throws IOException {
        json.writeStringField(name, value);
    }

    void text(String name, Optional<String> value) throws IOException {
        json.writeFieldName(name);
        json.writeString(value.orElse(null));
    }

    void count(String name, long value) throws IOException {
        json.writeNumberField(name, value);
    }

    void count(String name, Optional<Long> value) throws IOException {
        if (value.isPresent()) {
            count(name, value.get());
        } else {
            json.writeNullField(name);
        }
    }

    void number(String name, double value) throws IOException {
        json.writeNumberField(name, value);
    }

    void number(String name, Optional<Double> value) throws IOException {
        if (value.isPresent()) {
            number(name, value.get());
        } else {
            json.writeNullField(name);
        }
    }

    void seconds(String name, Duration duration) throws IOException {
        if (duration.getNano() == 0) {
            count(name, duration.toSeconds());
        } else {
            number(name, duration.toNanos() / 1e9);
        }
    }

    void texts(String name, Collection<String> values) throws IOException {
        json.writeArrayFieldStart(name);
        for (var value : values) {
            json.writeString(value);
        }
        json.writeEndArray();
    }

    <T> void object(T from, Fields<T> fields) throws IOException {
        json.writeStartObject();
        fields.write(from);
        json.writeEndObject();
    }

    <T> void object(String name, T from, Fields<T> fields) throws IOException {
        json.writeFieldName(name);
        object(from, fields);
    }

    <T> void object(String name, Optional<T> from, Fields<T> fields) throws IOException {
        if (from.isPresent()) {
            object(name, from.get(), fields);
        } else {
            json.writeNullField(name);
        }
    }

    <T> void objects(String name, Collection<T> from, Fields<T> fields) throws IOException {
        json.writeArrayFieldStart(name);
        for (var one : from) {
            object(one, fields);
        }
        json.writeEndArray();
    }

    /** Each object on a line of its own. */
    <T> void lines(String name, Collection<T> from, Fields<T> fields) throws IOException {
        json.writeArrayFieldStart(name);
        printer.indentObjectsWith(FixedSpaceIndenter.instance);
        for (var one : from) {
            object(one, fields);
        }
        printer.indentObjectsWith(DefaultIndenter.SYSTEM_LINEFEED_INSTANCE);
        json.writeEndArray();
    }

    void end() throws IOException {
        json.writeRaw(System.lineSeparator());
        json.close();
    }
}
