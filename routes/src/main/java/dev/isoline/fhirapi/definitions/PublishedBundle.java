package dev.isoline.fhirapi.definitions;

import dev.isoline.resources.FhirJson;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Resource;

/**
 * A Bundle of the FHIR R4 publication, as XML text cut into its entries. Cutting looks for tags
 * only: to read all of them takes a hundred times as long, and few are ever asked for.
 */
final class PublishedBundle {

    private static final String BEGIN = "<entry>";
    private static final String END = "</entry>";

    /** One character per byte. */
    private final String text;

    PublishedBundle(String path) {
        try (var stream = PublishedBundle.class.getResourceAsStream(path)) {
            text = new String(stream.readAllBytes(), StandardCharsets.ISO_8859_1);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    List<Entry> entries() {
        var entries = new ArrayList<Entry>();
        int begin = text.indexOf(BEGIN);
        while (begin >= 0) {
            int end = text.indexOf(END, begin) + END.length();
            entries.add(entry(begin, end));
            begin = text.indexOf(BEGIN, end);
        }
        return entries;
    }

    /** Children of the resource are told from deeper elements by the margin before them. */
    private Entry entry(int begin, int end) {
        String entry = text.substring(begin, end);
        int tag = entry.indexOf('<', entry.indexOf("<resource>") + 1);
        int close = entry.indexOf('>', tag);
        String type = entry.substring(tag + 1, close).split(" ", 2)[0];
        String margin = entry.substring(close + 1, entry.indexOf('<', close));
        int url = entry.indexOf('"', entry.indexOf(margin + "<url value=", close)) + 1;
        int snapshot = entry.indexOf(margin + "<snapshot>", close);
        return new Entry(
                type,
                entry.substring(url, entry.indexOf('"', url)),
                begin,
                snapshot < 0 ? end : begin + snapshot,
                end);
    }

    private String utf8(int begin, int end) {
        byte[] bytes = text.substring(begin, end).getBytes(StandardCharsets.ISO_8859_1);
        return new String(bytes, StandardCharsets.UTF_8);
    }

    /** Reads entries in the Bundle they stood in. */
    static List<Resource> read(String entries) {
        return FhirJson.CONTEXT
                .newXmlParser()
                .parseResource(
                        Bundle.class,
                        "<Bundle xmlns=\"http://hl7.org/fhir\">" + entries + "</Bundle>")
                .getEntry()
                .stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .toList();
    }

    /** One resource of the Bundle. */
    final class Entry {

        final String type;
        final String url;
        private final int begin;
        private final int snapshot;
        private final int end;

        private Entry(String type, String url, int begin, int snapshot, int end) {
            this.type = type;
            this.url = url;
            this.begin = begin;
            this.snapshot = snapshot;
            this.end = end;
        }

        Resource read() {
            return PublishedBundle.read(utf8(begin, end)).get(0);
        }

        /** The entry up to the elements of the structure, which come last and are most of it. */
        String header() {
            return utf8(begin, snapshot) + "</StructureDefinition></resource></entry>";
        }
    }
}
