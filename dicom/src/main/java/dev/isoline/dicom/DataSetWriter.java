package dev.isoline.dicom;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.WritableByteChannel;

/**
 * Writes data sets in one of the two little endian syntaxes, PS3.5 chapter 7.
 *
 * <p>Lengths are defined, but for a sequence whose items exceed 32 bits. Bulk values go straight to
 * the channel.
 */
public final class DataSetWriter {

    private static final int UNDEFINED = -1;
    private static final int LONGEST_SHORT = 0xFFFE;

    private boolean announced;

    private final WritableByteChannel target;
    private final boolean explicit;
    private final EncodedLength lengths;
    private final ByteBuffer buffer = ByteBuffer.allocate(8192).order(ByteOrder.LITTLE_ENDIAN);

    public DataSetWriter(WritableByteChannel target, TransferSyntax syntax) {
        this.target = target;
        this.explicit = syntax == TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
        this.lengths = new EncodedLength(syntax);
    }

    /** Writes the data set; the channel stays open. */
    public void write(DataSet dataSet) throws IOException {
        write(dataSet, CharacterSet.ISO_IR_6);
        flush();
    }

    private void write(DataSet dataSet, CharacterSet outer) throws IOException {
        CharacterSet set = EncodedText.characterSet(dataSet, outer);
        for (Element element : dataSet.elements()) {
            if (announced) {
                throw new DicomException(element.tag(), "stands after a value still to come");
            }
            write(element, set);
        }
    }

    private void write(Element element, CharacterSet set) throws IOException {
        long length = lengths.ofValue(element, set);
        header(element, length);
        if (element.value() instanceof Value.Items sequence) {
            items(sequence, set, length);
        } else if (element.value() instanceof Value.Bulk bulk) {
            bulk(element.tag(), bulk.bulk());
        } else {
            bytes(EncodedText.bytes(element, set), element.vr().padding());
        }
    }

    private void header(Element element, long length) throws IOException {
        Vr vr = element.vr();
        tag(element.tag());
        if (length > BulkValue.MAX && vr != Vr.SQ) {
            throw new DicomException(element.tag(), "is longer than 4294967294 bytes");
        }
        int field = length > BulkValue.MAX ? UNDEFINED : (int) length;
        if (!explicit) {
            room(4).putInt(field);
        } else if (vr.hasLongLength()) {
            vr(vr).putShort((short) 0).putInt(field);
        } else if (length > LONGEST_SHORT) {
            throw new DicomException(element.tag(), "is longer than the 65534 bytes of " + vr);
        } else {
            vr(vr).putShort((short) length);
        }
    }

    private ByteBuffer vr(Vr vr) throws IOException {
        String name = vr.name();
        return room(8).put((byte) name.charAt(0)).put((byte) name.charAt(1));
    }

    private void items(Value.Items sequence, CharacterSet set, long length) throws IOException {
        for (DataSet item : sequence.items()) {
            long content = lengths.of(item, set);
            delimiter(Delimiter.ITEM, content > BulkValue.MAX ? UNDEFINED : (int) content);
            write(item, set);
            if (content > BulkValue.MAX) {
                delimiter(Delimiter.ITEM_END, 0);
            }
        }
        if (length > BulkValue.MAX) {
            delimiter(Delimiter.SEQUENCE_END, 0);
        }
    }

    private void delimiter(int tag, int length) throws IOException {
        tag(tag);
        room(4).putInt(length);
    }

    private void tag(int tag) throws IOException {
        room(4).putShort((short) (tag >>> 16)).putShort((short) tag);
    }

    private void bulk(int tag, BulkValue bulk) throws IOException {
        flush();
        if (bulk instanceof AnnouncedBulk) {
            announced = true;
            return;
        }
        var counted = new CountingChannel(target);
        bulk.writeTo(counted);
        if (counted.count() != bulk.length()) {
            throw new DicomException(
                    tag, "gave " + counted.count() + " of " + bulk.length() + " bytes");
        }
        if ((bulk.length() & 1) == 1) {
            room(1).put((byte) 0);
        }
    }

    private void bytes(byte[] bytes, byte padding) throws IOException {
        for (int at = 0; at < bytes.length; ) {
            ByteBuffer room = room(1);
            int part = Math.min(room.remaining(), bytes.length - at);
            room.put(bytes, at, part);
            at += part;
        }
        if ((bytes.length & 1) == 1) {
            room(1).put(padding);
        }
    }

    private ByteBuffer room(int bytes) throws IOException {
        if (buffer.remaining() < bytes) {
            flush();
        }
        return buffer;
    }

    private void flush() throws IOException {
        buffer.flip();
        while (buffer.hasRemaining()) {
            target.write(buffer);
        }
        buffer.clear();
    }
}
