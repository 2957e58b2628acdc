package dev.isoline.dicom.json;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Element;
import dev.isoline.dicom.Value;
import dev.isoline.dicom.Vr;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/** Writes data sets as DICOM JSON, PS3.18 F.2; the stream stays open. */
public final class DicomJsonWriter {

    private final Writer out;
    private final BulkDataNames names;

    public DicomJsonWriter(OutputStream out, BulkDataNames names) {
        this.out = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
        this.names = names;
    }

    /**
     * One data set as one object.
     *
     * @throws DicomException where a value is none of its VR, or one that JSON cannot say
     */
    public void write(DataSet dataSet) throws IOException {
        object(dataSet);
        out.flush();
    }

    /** Several data sets as one array, PS3.18 F.2.1. */
    public void write(List<DataSet> dataSets) throws IOException {
        array(dataSets);
        out.flush();
    }

    private void array(List<DataSet> dataSets) throws IOException {
        out.write('[');
        String comma = "";
        for (DataSet dataSet : dataSets) {
            out.write(comma);
            object(dataSet);
            comma = ",";
        }
        out.write(']');
    }

    private void object(DataSet dataSet) throws IOException {
        out.write('{');
        String comma = "";
        for (Element element : dataSet.elements()) {
            out.write(comma);
            attribute(dataSet, element);
            comma = ",";
        }
        out.write('}');
    }

    /** F.2.2: vr and at most one of Value, BulkDataURI and InlineBinary. */
    private void attribute(DataSet dataSet, Element element) throws IOException {
        out.write(String.format("\"%08X\":{\"vr\":\"%s\"", element.tag(), element.vr()));
        Optional<String> uri = names.uri(element);
        if (uri.isPresent()) {
            out.write(",\"BulkDataURI\":");
            JsonText.write(out, uri.get());
        } else if (!isEmpty(dataSet, element)) {
            value(dataSet, element);
        }
        out.write('}');
    }

    /** F.2.5: no Value; so too where there is nothing but padding. */
    private static boolean isEmpty(DataSet dataSet, Element element) throws DicomException {
        return element.isEmpty()
                || element.vr().isText() && dataSet.texts(element.tag()).equals(List.of(""));
    }

    private void value(DataSet dataSet, Element element) throws IOException {
        if (JsonVr.isBinary(element.vr())) {
            out.write(",\"InlineBinary\":\"");
            binary(element);
            out.write('"');
        } else {
            out.write(",\"Value\":");
            if (element.vr() == Vr.SQ) {
                array(element.items());
            } else {
                JsonValues.write(out, dataSet, element);
            }
        }
    }

    /** F.2.7: the whole value field, little endian, with its padding. */
    private void binary(Element element) throws IOException {
        try (var base64 = new JsonText.Base64Channel(out)) {
            if (element.value() instanceof Value.Bulk bulk) {
                bulk.bulk().writeTo(base64);
            } else if (element.value() instanceof Value.Bytes raw) {
                base64.write(ByteBuffer.wrap(raw.bytes()));
            }
            if ((element.length() & 1) == 1) {
                base64.write(ByteBuffer.wrap(new byte[1]));
            }
        }
    }
}
