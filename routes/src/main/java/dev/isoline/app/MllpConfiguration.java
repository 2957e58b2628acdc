package dev.isoline.app;

import dev.isoline.mllp.MllpHandlers;
import dev.isoline.settings.IsolineProperties;
import org.apache.camel.component.netty.ChannelHandlerFactory;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The handlers of an MLLP connection, by the names the route's endpoint refers to. */
@Configuration
class MllpConfiguration {

    private final IsolineProperties.Mllp mllp;

    MllpConfiguration(IsolineProperties properties) {
        this.mllp = properties.mllp();
    }

    @Bean
    ChannelHandlerFactory mllpIdle() {
        return MllpHandlers.idle(mllp.idle());
    }

    @Bean
    ChannelHandlerFactory mllpDecoder() {
        return MllpHandlers.decoder(mllp.maxFrameBytes());
    }

    @Bean
    ChannelHandlerFactory mllpEncoder() {
        return MllpHandlers.encoder();
    }
}
