package dev.isoline.dicom;

import java.io.IOException;
import java.nio.channels.ReadableByteChannel;
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
    private final Budget budget;
    private final BulkStore store;

    DataSetReader(ByteSource source, ReadLimits limits, BulkStore store) {
        this.source = source;
        this.budget = new Budget(limits);
        this.store = store;
    }

    /** The data set from the channel's position to its end; the channel stays open for its bulk. */
    public static DataSet read(
            SeekableByteChannel channel, TransferSyntax syntax, ReadLimits limits)
            throws IOException {
        return new DataSetReader(new ByteSource(channel), limits, BulkStore.NONE).rest(syntax);
    }

    /** The data set the bytes are; its bulk stays in them. */
    public static DataSet read(byte[] bytes, TransferSyntax syntax, ReadLimits limits)
            throws IOException {
        return read(new BytesChannel(bytes), syntax, limits);
    }

    /** The data set a stream is, up to its end; values too long to hold go to the store. */
    public static DataSet read(
            ReadableByteChannel stream, TransferSyntax syntax, ReadLimits limits, BulkStore store)
            throws IOException {
        return new DataSetReader(new ByteSource(stream), limits, store).rest(syntax);
    }

    DataSet rest(TransferSyntax syntax) throws IOException {
        return elements(Scope.whole(syntax, source));
    }

    /**
     * Group 0002, always Explicit VR, up to the first tag of another group; elements PS3.10 does
     * not name are ignored, PS3.10 7.1.
     */
    DataSet fileMeta() throws IOException {
        var scope = Scope.whole(TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN, source);
        var meta = new DataSet();
        while (source.size() - source.position() >= SHORTEST_ELEMENT
                && source.peekTag() >>> 16 == 0x0002) {
            int tag = source.tag();
            element(scope, meta, tag);
            if (Dictionary.vr(tag) == Vr.UN) {
                meta.remove(tag);
            }
        }
        return meta;
    }

    private boolean hasMore(Scope scope) throws IOException {
        boolean toTheEnd = scope.end() == ByteSource.UNKNOWN;
        return scope.delimited() || (toTheEnd ? source.hasMore() : source.position() < scope.end());
    }

    private DataSet elements(Scope outer) throws IOException {
        var dataSet = new DataSet();
        Scope scope = outer;
        while (hasMore(scope)) {
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
                    source.lastTag(), "is followed by too few bytes for another element");
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
        budget.element(tag);
        Vr vr = scope.explicit() ? explicitVr(tag) : Dictionary.vr(tag);
        int length = length(scope, tag, vr);
        Element element = value(scope, tag, known(tag, vr), length);
        if (!Tag.isGroupLength(tag)) {
            dataSet.put(element);
        }
    }

    /** UN is not for private creators and not for group 0002, PS3.5 6.2.2. */
    private static Vr known(int tag, Vr vr) {
        boolean mayBeUnknown = !Tag.isPrivateCreator(tag) && tag >>> 16 != 0x0002;
        return vr == Vr.UN && !mayBeUnknown ? Dictionary.vr(tag) : vr;
    }

    private int length(Scope scope, int tag, Vr vr) throws IOException {
        if (scope.explicit() && !vr.hasLongLength()) {
            return source.unsigned16();
        }
        if (scope.explicit()) {
            if (scope.end() - source.position() < 6) {
                throw new DicomException(tag, "ends before its length");
            }
            source.unsigned16();
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
        if (budget.isBulk(vr, unsigned)) {
            return new Element(tag, kept(tag, vr, unsigned), new Value.Bulk(bulk(tag, unsigned)));
        }
        budget.memory(tag, unsigned);
        byte[] bytes = source.bytes(length);
        return new Element(tag, kept(tag, vr, unsigned), new Value.Bytes(bytes, set(scope, vr)));
    }

    private static CharacterSet set(Scope scope, Vr vr) {
        return vr.usesCharacterSet() || vr == Vr.UN ? scope.set() : CharacterSet.ISO_IR_6;
    }

    /** UN where the value is too long for its VR in Explicit VR, PS3.5 6.2.2. */
    private static Vr kept(int tag, Vr vr, long length) throws DicomException {
        boolean tooLong = length > LONGEST_SHORT && !vr.hasLongLength();
        if (tooLong && Tag.isPrivateCreator(tag)) {
            throw new DicomException(tag, "is a private creator of " + length + " bytes");
        }
        return tooLong ? Vr.UN : vr;
    }

    private BulkValue bulk(int tag, long length) throws IOException {
        if (source.file() == null) {
            return stored(tag, length);
        }
        var bulk = new FileBulk(source.file(), source.position(), length);
        source.skip(length);
        return bulk;
    }

    private BulkValue stored(int tag, long length) throws IOException {
        long end = source.position() + length;
        BulkValue bulk = store.keep(tag, length, source.part(length));
        if (source.position() != end) {
            throw new DicomException(tag, "was not taken as a whole by the store of bulk values");
        }
        return bulk;
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
        budget.depth(tag, scope.depth());
        var inner = vr == Vr.UN ? TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN : scope.syntax();
        boolean open = length == UNDEFINED;
        long end = open ? scope.end() : end(scope, tag, length);
        return new Element(tag, Vr.SQ, items(scope.sequence(inner, end, open), tag));
    }

    private long end(Scope scope, int tag, int length) throws DicomException {
        checkRoom(scope, tag, Integer.toUnsignedLong(length));
        return source.position() + Integer.toUnsignedLong(length);
    }

    private Value.Items items(Scope scope, int sequence) throws IOException {
        var items = new ArrayList<DataSet>();
        while (hasMore(scope)) {
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
        budget.element(sequence);
        boolean open = length == UNDEFINED;
        long end = open ? scope.end() : end(scope, sequence, length);
        return elements(scope.item(end, open));
    }
}
