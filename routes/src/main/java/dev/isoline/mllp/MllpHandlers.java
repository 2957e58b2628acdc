package dev.isoline.mllp;

import io.netty.channel.ChannelHandler;
import java.time.Duration;
import java.util.function.Supplier;
import org.apache.camel.component.netty.ChannelHandlerFactory;
import org.apache.camel.component.netty.DefaultChannelHandlerFactory;

/**
 * Makes the MLLP handlers of each new connection of a camel-netty endpoint. As {@code decoders}:
 * {@link #idle} first, then {@link #decoder}; as {@code encoders}: {@link #encoder}.
 */
public final class MllpHandlers {

    private MllpHandlers() {}

    public static ChannelHandlerFactory decoder(int maxFrameBytes) {
        return each(() -> new MllpFrameDecoder(maxFrameBytes));
    }

    public static ChannelHandlerFactory encoder() {
        return each(MllpFrameEncoder::new);
    }

    public static ChannelHandlerFactory idle(Duration idle) {
        return each(() -> new IdleConnectionHandler(idle));
    }

    private static ChannelHandlerFactory each(Supplier<ChannelHandler> handler) {
        return new DefaultChannelHandlerFactory() {
            @Override
            public ChannelHandler newChannelHandler() {
                return handler.get();
            }
        };
    }
}
