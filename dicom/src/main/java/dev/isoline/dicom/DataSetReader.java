package dev.isoline.dicom;

import java.io.IOException;
import java.nio.channels.SeekableByteChannel;
import java.util.ArrayList;

/**
 * Reads data sets in one of the two little endian syntaxes, PS3.5 chapter 7: defined and undefined
 * lengths, UN of undefined length, private elements. Group lengths are dropped (7.2), values over
 * {@link ReadLimits#inline} stay in the source.
 */
public final class DataSetReader {

    private static final int UNDEFINED = -1;
    private static final int SHORTEST_ELEMENT = 8;
    private static final int LONGEST_SHORT = 0xFFFE;

    private final ByteSource source;
    private final ReadLimits limits;
    private int elements;
    private long memory;

    DataSetReader(ByteSource source, ReadLimits limits) {
        this.source = source;
        this.limits = limits;
    }

    /** The data set from the channel's position to its end; the channel stays open for its bulk. */
    public static DataSet read(
            SeekableByteChannel channel, TransferSyntax syntax, ReadLimits limits)
            throws IOException {
        return new DataSetReader(new ByteSource(channel), limits).rest(syntax);
    }

    DataSet rest(TransferSyntax syntax) throws IOException {
        return elements(new Scope(syntax, source.size(), false, 0, CharacterSet.ISO_IR_6));
    }

    /** Group 0002, always Explicit VR, up to the first tag of another group; PS3.10 7.1. */
    DataSet fileMeta() throws IOException {
        var scope =
                new Scope(
                        TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN,
                        source.size(),
                        false,
                        0,
                        CharacterSet.ISO_IR_6);
        var meta = new DataSet();
        while (source.size() - source.position() >= SHORTEST_ELEMENT
                && source.peekTag() >>> 16 == 0x0002) {
            element(scope, meta, source.tag());
        }
        return meta;
    }

    /** Where elements are being read: up to a position, or up to a delimiter before it. */
    private record Scope(
            TransferSyntax syntax, long end, boolean delimited, int depth, CharacterSet set) {

        Scope within(TransferSyntax inner, long innerEnd, boolean open) {
            return new Scope(inner, innerEnd, open, depth, set);
        }

        Scope deeper() {
            return new Scope(syntax, end, delimited, depth + 1, set);
        }

        Scope in(CharacterSet other) {
            return new Scope(syntax, end, delimited, depth, other);
        }

        boolean explicit() {
            return syntax == TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
        }
    }

    private DataSet elements(Scope outer) throws IOException {
        var dataSet = new DataSet();
        Scope scope = outer;
        while (scope.delimited() || source.position() < scope.end()) {
            int tag = tag(scope);
            if (tag == Delimiter.ITEM_END && scope.delimited()) {
                source.length();
                return dataSet;
            }
            element(scope, dataSet, tag);
            if (tag == Tag.SpecificCharacterSet) {
                scope = scope.in(EncodedText.characterSet(dataSet, scope.set()));
            }
        }
        return dataSet;
    }

    private int tag(Scope scope) throws IOException {
        if (scope.end() - source.position() < SHORTEST_ELEMENT) {
            throw new DicomException(
                    source.position() + 4 <= source.size() ? source.peekTag() : 0,
                    "starts where its data set ends");
        }
        return source.tag();
    }

    private void element(Scope scope, DataSet dataSet, int tag) throws IOException {
        if (tag >>> 16 == 0xFFFE) {
            throw new DicomException(tag, "stands outside a sequence");
        }
        if (dataSet.contains(tag)) {
            throw new DicomException(tag, "stands twice in one data set");
        }
        if (++elements > limits.elements()) {
            throw new DicomException(tag, "exceeds the limit of " + limits.elements());
        }
        Vr vr = scope.explicit() ? explicitVr(tag) : Dictionary.vr(tag);
        int length = length(scope, tag, vr);
        Element element = value(scope, tag, vr, length);
        if (!Tag.isGroupLength(tag)) {
            dataSet.put(element);
        }
    }

    private int length(Scope scope, int tag, Vr vr) throws IOException {
        if (scope.explicit() && !vr.hasLongLength()) {
            return source.unsigned16();
        }
        if (scope.explicit()) {
            if (scope.end() - source.position() < 6) {
                throw new DicomException(tag, "ends before its length");
            }
            source.skip(2);
        }
        return source.length();
    }

    private Vr explicitVr(int tag) throws IOException {
        Vr vr = Vr.of(source.unsigned8(), source.unsigned8());
        if (vr == null) {
            throw new DicomException(tag, "has a VR that PS3.5 does not know");
        }
        return vr;
    }

    private Element value(Scope scope, int tag, Vr vr, int length) throws IOException {
        if (vr == Vr.SQ || length == UNDEFINED) {
            return sequence(scope, tag, vr, length);
        }
        long unsigned = Integer.toUnsignedLong(length);
        checkRoom(scope, tag, unsigned);
        boolean tooLongForItsVr = unsigned > LONGEST_SHORT && !vr.hasLongLength();
        Vr kept = tooLongForItsVr ? Vr.UN : vr;
        if (unsigned > limits.inline()) {
            var bulk = new FileBulk(source.channel(), source.position(), unsigned);
            source.skip(unsigned);
            return new Element(tag, kept, new Value.Bulk(bulk));
        }
        memory += unsigned;
        if (memory > limits.memory()) {
            throw new DicomException(tag, "exceeds the limit of bytes held in memory");
        }
        return new Element(tag, kept, new Value.Bytes(source.bytes(length), scope.set()));
    }

    private void checkRoom(Scope scope, int tag, long length) throws DicomException {
        if (length > scope.end() - source.position()) {
            throw new DicomException(
                    tag, "has a length of " + length + " bytes, more than are left");
        }
    }

    /** UN of undefined length is a sequence in Implicit VR, PS3.5 6.2.2 note. */
    private Element sequence(Scope scope, int tag, Vr vr, int length) throws IOException {
        if (vr != Vr.SQ && vr != Vr.UN) {
            throw new DicomException(tag, "has an undefined length, but is no sequence");
        }
        if (scope.depth() >= limits.depth()) {
            throw new DicomException(tag, "is nested deeper than " + limits.depth());
        }
        var inner = vr == Vr.UN ? TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN : scope.syntax();
        boolean open = length == UNDEFINED;
        long end = scope.end();
        if (!open) {
            checkRoom(scope, tag, Integer.toUnsignedLong(length));
            end = source.position() + Integer.toUnsignedLong(length);
        }
        return new Element(tag, Vr.SQ, items(scope.within(inner, end, open).deeper(), tag));
    }

    private Value.Items items(Scope scope, int sequence) throws IOException {
        var items = new ArrayList<DataSet>();
        while (scope.delimited() || source.position() < scope.end()) {
            int tag = tag(scope);
            int length = source.length();
            if (tag == Delimiter.SEQUENCE_END && scope.delimited()) {
                break;
            }
            if (tag != Delimiter.ITEM) {
                throw new DicomException(sequence, "holds something that is no item");
            }
            items.add(item(scope, sequence, length));
        }
        return new Value.Items(items);
    }

    private DataSet item(Scope scope, int sequence, int length) throws IOException {
        if (++elements > limits.elements()) {
            throw new DicomException(sequence, "exceeds the limit of " + limits.elements());
        }
        if (length == UNDEFINED) {
            return elements(scope.within(scope.syntax(), scope.end(), true));
        }
        checkRoom(scope, sequence, Integer.toUnsignedLong(length));
        long end = source.position() + Integer.toUnsignedLong(length);
        return elements(scope.within(scope.syntax(), end, false));
    }
}
