package dev.isoline.mllp;

import io.netty.channel.ChannelHandlerContext;
import io.netty.handler.timeout.IdleStateEvent;
import io.netty.handler.timeout.IdleStateHandler;
import java.time.Duration;
import java.util.concurrent.TimeUnit;

/** Closes a connection on which nothing was read for a while, also in the middle of a block. */
public final class IdleConnectionHandler extends IdleStateHandler {

    public IdleConnectionHandler(Duration idle) {
        super(idle.toMillis(), 0, 0, TimeUnit.MILLISECONDS);
    }

    @Override
    protected void channelIdle(ChannelHandlerContext context, IdleStateEvent event) {
        context.close();
    }
}
