package dev.isoline.mllp;

import io.netty.buffer.ByteBuf;
import io.netty.channel.ChannelHandlerContext;
import io.netty.handler.codec.MessageToByteEncoder;
import java.util.List;

/**
 * Messages to MLLP release 1 blocks. A {@code byte[]} is one block, a list of them one block each;
 * an empty message is no block at all.
 */
public final class MllpFrameEncoder extends MessageToByteEncoder<Object> {

    @Override
    public boolean acceptOutboundMessage(Object message) {
        return message instanceof byte[] || message instanceof List;
    }

    @Override
    protected void encode(ChannelHandlerContext context, Object message, ByteBuf out) {
        var messages = message instanceof List<?> list ? list : List.of(message);
        for (Object each : messages) {
            byte[] bytes = (byte[]) each;
            if (bytes.length > 0) {
                out.writeBytes(Block.frame(bytes));
            }
        }
    }
}
