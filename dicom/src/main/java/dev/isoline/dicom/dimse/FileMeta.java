package dev.isoline.dicom.dimse;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DataSetReader;
import dev.isoline.dicom.DataSetWriter;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.Vr;
import dev.isoline.dicom.spi.SopReference;
import dev.isoline.dicom.spi.StoreRequest;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;

/**
 * What stands before the data set of a Part 10 file: preamble, prefix and group 0002; PS3.10 7.1.
 *
 * @param instance Media Storage SOP Class and Instance UID
 * @param transferSyntax Transfer Syntax UID
 * @param source Source Application Entity Title; empty where it is not said
 * @param length bytes before the data set, where the file was read
 */
record FileMeta(SopReference instance, String transferSyntax, String source, long length) {

    private static final int PREAMBLE = 128;
    private static final int PREFIX = 0x4449434D;

    /** Tag, VR, length and value of the group length. */
    private static final int GROUP_LENGTH = 12;

    private static final int BEFORE_GROUP = PREAMBLE + 4 + GROUP_LENGTH;
    private static final int LONGEST = 64 * 1024;

    /** Of an object that arrives. */
    static FileMeta of(StoreRequest request) {
        return new FileMeta(
                request.instance(),
                request.transferSyntax().uid(),
                request.peer().calling().value(),
                0);
    }

    ByteBuffer encode() throws IOException {
        var group = new ByteArrayOutputStream();
        var explicit = TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
        new DataSetWriter(Channels.newChannel(group), explicit).write(elements());
        ByteBuffer head =
                ByteBuffer.allocate(BEFORE_GROUP + group.size()).order(ByteOrder.LITTLE_ENDIAN);
        head.position(PREAMBLE);
        head.put(new byte[] {'D', 'I', 'C', 'M', 2, 0, 0, 0, 'U', 'L', 4, 0});
        return head.putInt(group.size()).put(group.toByteArray()).flip();
    }

    private DataSet elements() throws DicomException {
        var elements =
                new DataSet()
                        .putBytes(Tag.FileMetaInformationVersion, Vr.OB, new byte[] {0, 1})
                        .putText(Tag.MediaStorageSOPClassUID, instance.sopClass())
                        .putText(Tag.MediaStorageSOPInstanceUID, instance.sopInstance())
                        .putText(Tag.TransferSyntaxUID, transferSyntax)
                        .putText(Tag.ImplementationClassUID, Part10.IMPLEMENTATION_CLASS)
                        .putText(Tag.ImplementationVersionName, Part10.IMPLEMENTATION_VERSION);
        return source.isEmpty()
                ? elements
                : elements.putText(Tag.SourceApplicationEntityTitle, source);
    }

    /** Of a file; its channel is left where the data set begins. */
    static FileMeta read(FileChannel file) throws IOException {
        ByteBuffer head = read(file, 0, BEFORE_GROUP).order(ByteOrder.BIG_ENDIAN);
        if (head.getInt(PREAMBLE) != PREFIX) {
            throw missing();
        }
        head.order(ByteOrder.LITTLE_ENDIAN);
        long length = Integer.toUnsignedLong(head.getInt(BEFORE_GROUP - 4));
        if (head.getInt(PREAMBLE + 4) != 0x0002 || length > LONGEST) {
            throw new DicomException(
                    Tag.FileMetaInformationGroupLength, "is missing or of no sensible value");
        }
        byte[] group = read(file, BEFORE_GROUP, (int) length).array();
        file.position(BEFORE_GROUP + length);
        var explicit = TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
        DataSet meta = DataSetReader.read(group, explicit, ReadLimits.DEFAULT);
        var instance =
                new SopReference(
                        required(meta, Tag.MediaStorageSOPClassUID),
                        required(meta, Tag.MediaStorageSOPInstanceUID));
        String syntax = required(meta, Tag.TransferSyntaxUID);
        return new FileMeta(instance, syntax, "", BEFORE_GROUP + length);
    }

    private static String required(DataSet meta, int tag) throws DicomException {
        return meta.text(tag).orElseThrow(() -> new DicomException(tag, "is missing"));
    }

    private static ByteBuffer read(FileChannel file, long at, int length) throws IOException {
        var bytes = ByteBuffer.allocate(length);
        while (bytes.hasRemaining()) {
            if (file.read(bytes, at + bytes.position()) < 0) {
                throw missing();
            }
        }
        return bytes.flip();
    }

    private static DicomException missing() {
        return new DicomException(
                Tag.FileMetaInformationGroupLength, "is not preceded by a preamble and DICM");
    }
}
