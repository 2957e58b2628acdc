package dev.isoline.fhirapi;

import dev.isoline.ledger.Ledger;
import java.time.Clock;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.ApplicationRunner;
import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.boot.web.servlet.ServletRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Puts the FHIR API at {@code /fhir} and warms its validator while the rest starts. */
@Configuration
class FhirConfiguration {

    private static final Logger LOG = LoggerFactory.getLogger(FhirConfiguration.class);

    @Bean
    FhirValidation fhirValidation() {
        return FhirValidation.ofProcess();
    }

    @Bean
    ServletRegistrationBean<FhirServer> fhirServer(
            FhirGateway gateway, FhirValidation validation, Ledger ledger, Clock clock) {
        var server = new FhirServer(gateway, validation, ledger, clock);
        var registration = new ServletRegistrationBean<>(server, "/fhir/*");
        registration.setName("fhir");
        registration.setLoadOnStartup(1);
        return registration;
    }

    @Bean
    FilterRegistrationBean<RawRequestFilter> rawRequests(Ledger ledger, Clock clock) {
        var registration = new FilterRegistrationBean<>(new RawRequestFilter(ledger, clock));
        registration.addUrlPatterns("/fhir/*");
        registration.setOrder(0); // after Spring Security's filter, which is at -100
        return registration;
    }

    /** Spring reports readiness only when its runners are done. */
    @Bean
    ApplicationRunner validatorIsWarm() {
        return arguments -> {
            var faults = FhirValidation.warming().join();
            if (faults.hasIssue()) {
                LOG.warn("The validator refuses its own sample: {}", faults.getIssueFirstRep());
            }
        };
    }
}
