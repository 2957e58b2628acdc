package dev.isoline.flow;

import dev.isoline.hl7v2.Acknowledgement;
import dev.isoline.hl7v2.Er7Reader;
import dev.isoline.hl7v2.SenderDefaults;
import dev.isoline.hl7v2fhir.MappingContext;
import dev.isoline.hl7v2fhir.MessageToFhir;
import dev.isoline.resources.FhirJson;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.stereotype.Component;

/**
 * Reads, maps and encodes a sample before readiness is reported: the first message would otherwise
 * wait seconds for classes to load. Nothing is stored.
 */
@Component
public class Hl7WarmUp implements ApplicationRunner {

    private static final Instant AT = Instant.EPOCH;

    /** Completed when it is done, which it is once in a process. */
    public static CompletableFuture<Void> warming() {
        return Once.WARMING;
    }

    private static final class Once {

        static final CompletableFuture<Void> WARMING =
                CompletableFuture.runAsync(Hl7WarmUp::warmUp);
    }

    /** Spring reports readiness only when its runners are done. */
    @Override
    public void run(ApplicationArguments arguments) {
        warming().join();
    }

    private static void warmUp() {
        var message = Er7Reader.read(sample(), SenderDefaults.STANDARD);
        var context = new MappingContext("warm-up", "", Map.of(), ZoneOffset.UTC, AT);
        var mapped = MessageToFhir.map(message.message(), context);
        mapped.orders().forEach(order -> FhirJson.encode(order.serviceRequest()));
        FhirJson.decode(FhirJson.encode(mapped.patient().patient()));
        Acknowledgement.answers(message.header(), List.of(), "0", AT);
    }

    private static byte[] sample() {
        try (var sample = Hl7WarmUp.class.getResourceAsStream("warm-up.hl7")) {
            return sample.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
