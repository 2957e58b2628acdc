package dev.isoline.app;

import dev.isoline.delivery.ArchiveLines;
import dev.isoline.delivery.Commitments;
import dev.isoline.delivery.DeliveryWorker;
import dev.isoline.delivery.Destinations;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecgdicom.StripSettings;
import dev.isoline.ledger.Ledger;
import dev.isoline.settings.IsolineProperties;
import java.time.Clock;
import org.springframework.boot.ssl.SslBundles;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.scheduling.annotation.EnableScheduling;

/** The parts that are not components of their own. */
@Configuration
@EnableScheduling
class GatewayConfiguration {

    @Bean(initMethod = "start", destroyMethod = "close")
    DeliveryWorker deliveryWorker(
            Ledger ledger,
            IsolineProperties properties,
            SslBundles bundles,
            ArchiveLines lines,
            Commitments commitments,
            Clock clock) {
        return new DeliveryWorker(
                ledger,
                Destinations.of(properties, bundles, lines, commitments),
                properties.delivery(),
                clock);
    }

    @Bean
    AnalysisSettings analysisSettings(IsolineProperties properties) {
        return properties.recordings().analysis();
    }

    @Bean
    StripSettings stripSettings(IsolineProperties properties) {
        return new StripSettings(
                properties.recordings().strips(), properties.recordings().stripLength());
    }
}
