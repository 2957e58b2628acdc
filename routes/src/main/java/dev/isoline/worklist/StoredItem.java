package dev.isoline.worklist;

import dev.isoline.dicom.CharacterSet;
import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DataSetReader;
import dev.isoline.dicom.DataSetWriter;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.TransferSyntax;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.Channels;
import java.util.List;

/** A worklist item as the ledger keeps it: Explicit VR Little Endian in UTF-8. */
final class StoredItem {

    private static final TransferSyntax SYNTAX = TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;

    private StoredItem() {}

    static byte[] encode(DataSet item) {
        try {
            var bytes = new ByteArrayOutputStream(2048);
            var whole = new DataSet().putAll(item);
            whole.putText(Tag.SpecificCharacterSet, CharacterSet.ISO_IR_192.term());
            new DataSetWriter(Channels.newChannel(bytes), SYNTAX).write(whole);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static DataSet decode(byte[] bytes) {
        try {
            return DataSetReader.read(bytes, SYNTAX, ReadLimits.DEFAULT);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Values of what was checked when it was stored or asked for. */
    static List<String> texts(int tag, DataSet dataSet) {
        try {
            return dataSet.texts(tag);
        } catch (DicomException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** First value, or the empty text. */
    static String text(int tag, DataSet dataSet) {
        return texts(tag, dataSet).stream().findFirst().orElse("");
    }

    static DataSet step(DataSet item) {
        return item.item(Tag.ScheduledProcedureStepSequence).orElseThrow();
    }
}
