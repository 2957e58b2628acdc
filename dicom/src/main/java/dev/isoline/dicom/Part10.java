package dev.isoline.dicom;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.SeekableByteChannel;
import java.nio.channels.WritableByteChannel;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;

/**
 * A DICOM file, PS3.10 chapter 7: preamble, group 0002, one data set.
 *
 * @param meta group 0002 without its length
 * @param dataSet the object
 */
public record Part10(DataSet meta, DataSet dataSet) {

    /** Implementation Class UID (0002,0012) of this toolkit. */
    public static final String IMPLEMENTATION_CLASS = Uid.of("implementation class");

    /** Implementation Version Name (0002,0013). */
    public static final String IMPLEMENTATION_VERSION = "ISOLINE 0.1";

    private static final int PREAMBLE = 128;

    /** Groups before are of commands, files and directories, PS3.5 7.1. */
    private static final int FIRST_GROUP = 0x0008;

    private static final byte[] PREFIX = "DICM".getBytes(StandardCharsets.US_ASCII);

    /**
     * Reads a file; values over the limit stay in it, so the channel has to stay open as long as
     * they are used.
     *
     * @throws DicomException where the file breaks a rule or a limit
     */
    public static Part10 read(SeekableByteChannel file, ReadLimits limits) throws IOException {
        var source = new ByteSource(file);
        if (source.size() - source.position() < PREAMBLE + PREFIX.length
                || !Arrays.equals(prefix(source), PREFIX)) {
            throw new DicomException(
                    Tag.FileMetaInformationGroupLength, "is not preceded by a preamble and DICM");
        }
        var reader = new DataSetReader(source, limits, BulkStore.NONE);
        DataSet meta = reader.fileMeta();
        String syntax =
                meta.text(Tag.TransferSyntaxUID)
                        .orElseThrow(() -> new DicomException(Tag.TransferSyntaxUID, "is missing"));
        return new Part10(meta, reader.rest(TransferSyntax.of(syntax)));
    }

    private static byte[] prefix(ByteSource source) throws IOException {
        source.skip(PREAMBLE);
        return source.bytes(PREFIX.length);
    }

    /** Writes a file; the channel stays open. */
    public static void write(WritableByteChannel file, TransferSyntax syntax, DataSet dataSet)
            throws IOException {
        writeFully(file, ByteBuffer.wrap(head(syntax, dataSet)));
        new DataSetWriter(file, syntax).write(dataSet);
    }

    /** Preamble, prefix and group 0002 of a data set. */
    static byte[] head(TransferSyntax syntax, DataSet dataSet) throws IOException {
        DataSet meta = meta(syntax, dataSet);
        var explicit = TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
        long length = new EncodedLength(explicit).of(meta, CharacterSet.ISO_IR_6);
        meta.putInts(Tag.FileMetaInformationGroupLength, length);
        var head = new ByteArrayOutputStream();
        head.write(new byte[PREAMBLE]);
        head.write(PREFIX);
        new DataSetWriter(Channels.newChannel(head), explicit).write(meta);
        return head.toByteArray();
    }

    private static DataSet meta(TransferSyntax syntax, DataSet dataSet) throws DicomException {
        Optional<Element> first = dataSet.elements().stream().findFirst();
        if (first.isPresent() && first.get().tag() >>> 16 < FIRST_GROUP) {
            throw new DicomException(first.get().tag(), "belongs to no data set");
        }
        return new DataSet()
                .putBytes(Tag.FileMetaInformationVersion, Vr.OB, new byte[] {0, 1})
                .putText(Tag.MediaStorageSOPClassUID, uid(dataSet, Tag.SOPClassUID))
                .putText(Tag.MediaStorageSOPInstanceUID, uid(dataSet, Tag.SOPInstanceUID))
                .putText(Tag.TransferSyntaxUID, syntax.uid())
                .putText(Tag.ImplementationClassUID, IMPLEMENTATION_CLASS)
                .putText(Tag.ImplementationVersionName, IMPLEMENTATION_VERSION);
    }

    private static String uid(DataSet dataSet, int tag) throws DicomException {
        String uid = dataSet.text(tag).orElse("");
        if (!Uid.isValid(uid)) {
            throw new DicomException(tag, "is not a UID");
        }
        return uid;
    }

    private static void writeFully(WritableByteChannel file, ByteBuffer bytes) throws IOException {
        while (bytes.hasRemaining()) {
            file.write(bytes);
        }
    }
}
