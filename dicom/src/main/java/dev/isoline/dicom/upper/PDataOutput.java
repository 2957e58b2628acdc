package dev.isoline.dicom.upper;

import dev.isoline.dicom.spi.MaxPdu;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.WritableByteChannel;

/**
 * Sends a command set or a data set as fragments, one PDV in each P-DATA-TF, PS3.8 annexes D and E.
 * Bytes are gathered behind the headers they will be sent with, and never copied again.
 */
public final class PDataOutput implements WritableByteChannel {

    /** Header of the PDU and of its PDV. */
    private static final int HEADERS = 12;

    private static final int PDV_HEADER = 6;

    private final UpperLayer layer;
    private final ByteBuffer pdu;
    private Pdv fragment;
    private boolean open;

    /**
     * @param peer maximum length the peer announced, 0 no limit
     * @param maxPdu what we do not exceed
     */
    public PDataOutput(UpperLayer layer, int peer, MaxPdu maxPdu) {
        this.layer = layer;
        this.pdu = Buffers.take();
        int length = Math.min(limit(peer), limit(maxPdu.send()));
        pdu.limit(HEADERS + fragmentLength(length));
    }

    private static int limit(int length) {
        return length == 0 ? Integer.MAX_VALUE : length;
    }

    /** Even, as every value is, and no longer than the buffer. */
    private static int fragmentLength(int maxLength) {
        int most = Math.min(maxLength - PDV_HEADER, Buffers.SIZE - HEADERS);
        return Math.max(most, 2) & ~1;
    }

    /** Starts a command set or a data set. */
    public PDataOutput start(int contextId, boolean command) {
        fragment = new Pdv(contextId, command, false);
        pdu.position(HEADERS);
        open = true;
        return this;
    }

    @Override
    public int write(ByteBuffer source) throws IOException {
        int count = source.remaining();
        while (source.hasRemaining()) {
            flushIfFull();
            int part = Math.min(source.remaining(), pdu.remaining());
            pdu.put(pdu.position(), source, source.position(), part);
            pdu.position(pdu.position() + part);
            source.position(source.position() + part);
        }
        return count;
    }

    /** Reads from the source straight into the fragment; -1 at the end of the source. */
    public int readFrom(ReadableByteChannel source) throws IOException {
        flushIfFull();
        return source.read(pdu);
    }

    /** A full fragment is sent only when more follows it: the last one has to say that it is. */
    private void flushIfFull() throws IOException {
        if (!pdu.hasRemaining()) {
            send(fragment);
        }
    }

    private void send(Pdv header) throws IOException {
        int limit = pdu.limit();
        int length = pdu.position() - HEADERS;
        pdu.flip();
        pdu.put(0, (byte) PduType.P_DATA_TF.code()).put(1, (byte) 0);
        pdu.putInt(2, length + PDV_HEADER);
        pdu.putInt(6, length + 2);
        pdu.put(10, (byte) header.contextId()).put(11, (byte) header.control());
        layer.send(pdu);
        pdu.limit(limit).position(HEADERS);
    }

    @Override
    public boolean isOpen() {
        return open;
    }

    /** Sends the last fragment. */
    @Override
    public void close() throws IOException {
        if (open) {
            open = false;
            send(new Pdv(fragment.contextId(), fragment.command(), true));
        }
    }

    /** Gives its memory back; nothing else may follow. */
    public void dispose() {
        Buffers.give(pdu);
    }
}
