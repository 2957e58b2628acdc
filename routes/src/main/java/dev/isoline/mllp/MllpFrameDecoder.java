package dev.isoline.mllp;

import io.netty.buffer.ByteBuf;
import io.netty.buffer.ByteBufUtil;
import io.netty.channel.ChannelHandlerContext;
import io.netty.handler.codec.ByteToMessageDecoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * MLLP release 1 blocks to messages ({@code byte[]} without block characters), however TCP cuts
 * them. The rules, one by one: docs/flows/mllp-framing.md. One instance per connection.
 */
public final class MllpFrameDecoder extends ByteToMessageDecoder {

    private static final Logger LOG = LoggerFactory.getLogger(MllpFrameDecoder.class);
    private static final Set<String> HEADERS = Set.of("MSH", "BHS", "FHS");

    private final int maxFrameBytes;

    /** Bytes from the reader index on that are known to hold no end block character. */
    private int scanned;

    public MllpFrameDecoder(int maxFrameBytes) {
        this.maxFrameBytes = maxFrameBytes;
    }

    @Override
    protected void decode(ChannelHandlerContext context, ByteBuf in, List<Object> messages) {
        if (scanned == 0 && !skipToStart(in)) {
            return;
        }
        int from = in.readerIndex() + Math.max(1, scanned);
        int end = in.indexOf(from, in.writerIndex(), Block.END);
        int length = (end < 0 ? in.writerIndex() : end) - in.readerIndex() - 1;
        if (length > maxFrameBytes) {
            close(context, in);
        } else if (end < 0) {
            scanned = in.readableBytes();
        } else {
            emit(in, end, messages);
        }
    }

    private static boolean skipToStart(ByteBuf in) {
        int start = in.indexOf(in.readerIndex(), in.writerIndex(), Block.START);
        int skipped = (start < 0 ? in.writerIndex() : start) - in.readerIndex();
        in.skipBytes(skipped);
        return start >= 0;
    }

    /**
     * The end block character ends the block; the CR after it is skipped with all between blocks.
     */
    private void emit(ByteBuf in, int end, List<Object> messages) {
        int start = lastStart(in, end);
        byte[] message = ByteBufUtil.getBytes(in, start + 1, end - start - 1);
        in.readerIndex(end + 1);
        scanned = 0;
        if (message.length > 0) {
            messages.add(message);
        }
    }

    /** A start block character before a header segment: what came before it never ended. */
    private static int lastStart(ByteBuf in, int end) {
        int start = in.readerIndex();
        for (int i = start + 1; i + 3 < end; i++) {
            if (in.getByte(i) == Block.START && beginsMessage(in, i + 1)) {
                start = i;
            }
        }
        if (start > in.readerIndex()) {
            LOG.warn("an MLLP block that never ended was dropped before the next one began");
        }
        return start;
    }

    private static boolean beginsMessage(ByteBuf in, int at) {
        return HEADERS.contains(in.toString(at, 3, StandardCharsets.US_ASCII));
    }

    private void close(ChannelHandlerContext context, ByteBuf in) {
        LOG.warn("an MLLP block is longer than {} bytes; its connection is closed", maxFrameBytes);
        in.skipBytes(in.readableBytes());
        scanned = 0;
        context.close();
    }

    /** A block that has not ended when the connection does is no message. */
    @Override
    protected void decodeLast(ChannelHandlerContext context, ByteBuf in, List<Object> messages) {
        if (in.isReadable()) {
            decode(context, in, messages);
        }
    }
}
