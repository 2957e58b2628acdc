package dev.isoline.dicom.upper;

import dev.isoline.dicom.spi.MaxPdu;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ScatteringByteChannel;
import java.nio.channels.WritableByteChannel;

/**
 * Sends a command set or a data set as fragments, one PDV in each P-DATA-TF, PS3.8 annexes D and E.
 * Bytes are gathered behind the headers they will be sent with, and never copied again; short PDUs
 * are sent some at a time.
 */
public final class PDataOutput implements WritableByteChannel {

    /** Header of the PDU and of its PDV. */
    private static final int HEADERS = 12;

    private static final int PDV_HEADER = 6;

    /** PDUs sent at a time; more save no more. */
    private static final int MOST = 32;

    private final UpperLayer layer;
    private final ByteBuffer pdus;

    /** The fragment of each PDU; all are full but the last one written to. */
    private final ByteBuffer[] fragments;

    private int current;
    private Pdv header;
    private boolean open;

    /**
     * @param peer maximum length the peer announced, 0 no limit
     * @param maxPdu what we do not exceed
     */
    public PDataOutput(UpperLayer layer, int peer, MaxPdu maxPdu) {
        this.layer = layer;
        this.pdus = Buffers.take();
        this.fragments = fragments(fragmentLength(Math.min(limit(peer), limit(maxPdu.send()))));
    }

    private static int limit(int length) {
        return length == 0 ? Integer.MAX_VALUE : length;
    }

    /** Even, as every value is, and no longer than the buffer. */
    private static int fragmentLength(int maxLength) {
        int most = Math.min(maxLength - PDV_HEADER, Buffers.SIZE - HEADERS);
        return Math.max(most, 2) & ~1;
    }

    private ByteBuffer[] fragments(int length) {
        int count = Math.min(pdus.capacity() / (HEADERS + length), MOST);
        var slices = new ByteBuffer[count];
        for (int i = 0; i < count; i++) {
            slices[i] = pdus.slice(i * (HEADERS + length) + HEADERS, length);
        }
        return slices;
    }

    /** Starts a command set or a data set. */
    public PDataOutput start(int contextId, boolean command) {
        header = new Pdv(contextId, command, false);
        clear();
        open = true;
        return this;
    }

    private void clear() {
        for (ByteBuffer fragment : fragments) {
            fragment.clear();
        }
        current = 0;
    }

    @Override
    public int write(ByteBuffer source) throws IOException {
        int count = source.remaining();
        while (source.hasRemaining()) {
            makeRoom();
            ByteBuffer fragment = fragments[current];
            int part = Math.min(source.remaining(), fragment.remaining());
            fragment.put(fragment.position(), source, source.position(), part);
            fragment.position(fragment.position() + part);
            source.position(source.position() + part);
        }
        return count;
    }

    /** Reads from the source straight into the fragments; -1 at the end of the source. */
    public long readFrom(ScatteringByteChannel source) throws IOException {
        makeRoom();
        long count = source.read(fragments, current, fragments.length - current);
        while (current + 1 < fragments.length && fragments[current + 1].position() > 0) {
            current++;
        }
        return count;
    }

    /** A full fragment is sent only when more follows it: the last one has to say that it is. */
    private void makeRoom() throws IOException {
        if (fragments[current].hasRemaining()) {
            return;
        }
        if (current + 1 < fragments.length) {
            current++;
        } else {
            send(header);
        }
    }

    /**
     * @param last header of the last PDV written to
     */
    private void send(Pdv last) throws IOException {
        for (int i = 0; i < current; i++) {
            head(i, header);
        }
        head(current, last);
        pdus.position(0).limit(start(current) + HEADERS + fragments[current].position());
        layer.send(pdus);
        pdus.clear();
        clear();
    }

    private int start(int pdu) {
        return pdu * (HEADERS + fragments[0].capacity());
    }

    private void head(int pdu, Pdv of) {
        int at = start(pdu);
        int length = fragments[pdu].position();
        pdus.put(at, (byte) PduType.P_DATA_TF.code()).put(at + 1, (byte) 0);
        pdus.putInt(at + 2, length + PDV_HEADER);
        pdus.putInt(at + 6, length + 2);
        pdus.put(at + 10, (byte) of.contextId()).put(at + 11, (byte) of.control());
    }

    @Override
    public boolean isOpen() {
        return open;
    }

    /** Sends what is left, and with it the last fragment. */
    @Override
    public void close() throws IOException {
        if (open) {
            open = false;
            send(new Pdv(header.contextId(), header.command(), true));
        }
    }

    /** Gives its memory back; nothing else may follow. */
    public void dispose() {
        Buffers.give(pdus);
    }
}
