package dev.isoline.dicom.json;

import dev.isoline.dicom.BulkValue;
import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Element;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Value;
import dev.isoline.dicom.Vr;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Reads DICOM JSON, PS3.18 F.2. Text is Unicode until it is written; what breaks the model is
 * refused by its tag.
 */
public final class DicomJsonReader {

    private static final Pattern TAG = Pattern.compile("[0-9A-Fa-f]{8}");

    private final BulkDataSource bulk;

    private DicomJsonReader(BulkDataSource bulk) {
        this.bulk = bulk;
    }

    /**
     * The data set of one object.
     *
     * @throws DicomException where it is no JSON, breaks the model or exceeds a limit
     */
    public static DataSet read(InputStream json, ReadLimits limits, BulkDataSource bulk)
            throws IOException {
        return new DicomJsonReader(bulk).dataSet(JsonParser.parse(json, limits));
    }

    /** The data sets of an array, or the one of an object; F.2.1. */
    public static List<DataSet> readAll(InputStream json, ReadLimits limits, BulkDataSource bulk)
            throws IOException {
        var reader = new DicomJsonReader(bulk);
        Json parsed = JsonParser.parse(json, limits);
        return parsed instanceof Json.Array array
                ? reader.dataSets(array)
                : List.of(reader.dataSet(parsed));
    }

    private List<DataSet> dataSets(Json.Array array) throws IOException {
        var dataSets = new ArrayList<DataSet>();
        for (Json item : array.values()) {
            dataSets.add(dataSet(item));
        }
        return dataSets;
    }

    private DataSet dataSet(Json json) throws IOException {
        if (!(json instanceof Json.Members object)) {
            throw new DicomException("The JSON has no object where a data set is expected.");
        }
        var dataSet = new DataSet();
        for (Map.Entry<String, Json> member : object.members().entrySet()) {
            int tag = tag(member.getKey());
            if (dataSet.contains(tag)) {
                throw new DicomException(tag, "stands twice in one data set");
            }
            attribute(dataSet, tag, member.getValue());
        }
        return dataSet;
    }

    private static int tag(String name) throws DicomException {
        if (!TAG.matcher(name).matches() || name.regionMatches(true, 0, "FFFE", 0, 4)) {
            throw new DicomException("The JSON has a name that is not a tag of 8 hex digits.");
        }
        return Integer.parseUnsignedInt(name, 16);
    }

    private void attribute(DataSet dataSet, int tag, Json json) throws IOException {
        if (!(json instanceof Json.Members attribute)) {
            throw new DicomException(tag, "is no object");
        }
        Vr vr = vr(tag, attribute.members().get("vr"));
        Json value = attribute.members().get("Value");
        Json inline = attribute.members().get("InlineBinary");
        Json uri = attribute.members().get("BulkDataURI");
        checkOne(tag, value, inline, uri);
        if (uri != null) {
            dataSet.put(new Element(tag, vr, new Value.Bulk(bulk(tag, vr, uri))));
        } else if (inline != null) {
            JsonElement.binary(dataSet, tag, vr, inline);
        } else if (vr == Vr.SQ) {
            dataSet.putItems(
                    tag, value == null ? List.of() : dataSets(JsonElement.array(tag, value)));
        } else {
            JsonElement.values(dataSet, tag, vr, value);
        }
        if ((tag & 0xFFFF) == 0) {
            dataSet.remove(tag); // a group length, which F.2.2 has not
        }
    }

    private static Vr vr(int tag, Json json) throws DicomException {
        if (json instanceof Json.Text name) {
            return JsonVr.named(name.value())
                    .orElseThrow(
                            () -> new DicomException(tag, "has a vr that PS3.5 does not know"));
        }
        throw new DicomException(tag, "has no vr");
    }

    private static void checkOne(int tag, Json... forms) throws DicomException {
        int present = 0;
        for (Json form : forms) {
            present += form == null ? 0 : 1;
        }
        if (present > 1) {
            throw new DicomException(
                    tag, "has more than one of Value, InlineBinary and BulkDataURI");
        }
    }

    private BulkValue bulk(int tag, Vr vr, Json uri) throws IOException {
        if (!(uri instanceof Json.Text text) || !JsonVr.mayBeBulk(vr)) {
            throw new DicomException(tag, "has a BulkDataURI that is no string, or not for its vr");
        }
        return bulk.at(tag, text.value());
    }
}
