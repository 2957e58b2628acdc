package dev.isoline.app;

import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.LedgerFactory;
import dev.isoline.settings.IsolineProperties;
import java.io.Closeable;
import java.time.Clock;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.boot.autoconfigure.flyway.FlywayAutoConfiguration;
import org.springframework.boot.autoconfigure.jdbc.DataSourceAutoConfiguration;
import org.springframework.boot.autoconfigure.security.servlet.UserDetailsServiceAutoConfiguration;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.context.properties.ConfigurationPropertiesScan;
import org.springframework.context.annotation.Bean;

/** The gateway. Left out of Spring Boot's configuration: the ledger manages its own database. */
@SpringBootApplication(
        scanBasePackages = "dev.isoline",
        exclude = {
            DataSourceAutoConfiguration.class,
            FlywayAutoConfiguration.class,
            UserDetailsServiceAutoConfiguration.class
        })
@ConfigurationPropertiesScan("dev.isoline.settings")
public class IsolineApplication {

    public static void main(String[] arguments) {
        SpringApplication.run(IsolineApplication.class, arguments);
    }

    /**
     * Starts the gateway and returns when it is ready.
     *
     * @param settings default properties, {@code name=value}
     * @return the running gateway; to a caller whose class path may lack Spring it is no more
     */
    public static Closeable start(String... settings) {
        return new SpringApplicationBuilder(IsolineApplication.class).properties(settings).run();
    }

    @Bean
    Clock clock() {
        return Clock.systemUTC();
    }

    @Bean
    Ledger ledger(IsolineProperties properties) {
        var settings = properties.ledger();
        return LedgerFactory.open(
                settings.url(), settings.username(), settings.password(), properties.data());
    }
}
