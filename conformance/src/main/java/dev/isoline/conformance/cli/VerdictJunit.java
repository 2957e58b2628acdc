package dev.isoline.conformance.cli;

import dev.isoline.conformance.validator.Verdict;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.stream.Collectors;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** The XML that build servers read: one test case a verdict. Layout: common practice, no source. */
final class VerdictJunit {

    private final XMLStreamWriter xml;

    private VerdictJunit(XMLStreamWriter xml) {
        this.xml = xml;
    }

    static void write(List<Verdict> verdicts, PrintWriter out) throws IOException {
        try {
            XMLStreamWriter xml = XMLOutputFactory.newFactory().createXMLStreamWriter(out);
            new VerdictJunit(xml).suite(verdicts);
            xml.flush();
            out.println();
        } catch (XMLStreamException e) {
            throw new IOException(e);
        }
    }

    private void suite(List<Verdict> verdicts) throws XMLStreamException {
        xml.writeStartDocument();
        xml.writeStartElement("testsuite");
        xml.writeAttribute("name", "isoline check");
        xml.writeAttribute("tests", String.valueOf(verdicts.size()));
        xml.writeAttribute("failures", count(verdicts, Verdict.Outcome.FAILED));
        xml.writeAttribute("skipped", count(verdicts, Verdict.Outcome.NOT_CHECKED));
        for (Verdict verdict : verdicts) {
            testCase(verdict);
        }
        xml.writeEndElement();
        xml.writeEndDocument();
    }

    private static String count(List<Verdict> verdicts, Verdict.Outcome outcome) {
        return String.valueOf(verdicts.stream().filter(v -> v.outcome() == outcome).count());
    }

    private void testCase(Verdict verdict) throws XMLStreamException {
        xml.writeStartElement("testcase");
        xml.writeAttribute("classname", verdict.judge());
        xml.writeAttribute("name", verdict.file());
        switch (verdict.outcome()) {
            case FAILED -> result("failure", verdict);
            case NOT_CHECKED -> result("skipped", verdict);
            case PASSED -> {}
        }
        xml.writeEndElement();
    }

    private void result(String element, Verdict verdict) throws XMLStreamException {
        xml.writeStartElement(element);
        xml.writeAttribute(
                "message",
                verdict.findings().stream()
                        .map(VerdictText::line)
                        .collect(Collectors.joining("; ")));
        xml.writeEndElement();
    }
}
