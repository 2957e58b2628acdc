package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.api.server.RequestDetails;
import dev.isoline.intake.Intake;
import dev.isoline.intake.Source;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.Tables;
import dev.isoline.settings.IsolineProperties;
import dev.isoline.settings.Senders;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.CompletionException;
import java.util.function.Function;
import org.springframework.stereotype.Component;

/** Between the providers, which speak REST, and the ledger, which keeps what they are told. */
@Component
public final class FhirGateway {

    private final Ledger ledger;
    private final ResourceWrites writes;
    private final Clock clock;
    private final IsolineProperties properties;

    public FhirGateway(Ledger ledger, Intake intake, Clock clock, IsolineProperties properties) {
        this.ledger = ledger;
        this.writes = new ResourceWrites(intake);
        this.clock = clock;
        this.properties = properties;
    }

    /** Carries out one request's writes in one unit of work; returns after its commit. */
    <T> T write(RequestDetails request, List<WriteEntry> entries, After<T> after) {
        Source source = source(request);
        String base = request.getFhirServerBase();
        try {
            return ledger.write(
                            tables ->
                                    after.apply(
                                            tables, writes.write(tables, source, base, entries)))
                    .join();
        } catch (CompletionException e) {
            throw e.getCause() instanceof RuntimeException refusal ? refusal : e;
        }
    }

    Written write(RequestDetails request, WriteEntry entry) {
        return write(request, List.of(entry), (tables, written) -> written.get(0));
    }

    <T> T read(Function<Tables, T> query) {
        return ledger.read(query);
    }

    private Source source(RequestDetails request) {
        String actor = FhirRequest.actor(request);
        boolean named = properties.senders().containsKey(actor) || actor.equals(Senders.OPERATOR);
        String sender = named ? actor : Senders.DEFAULT;
        return new Source("fhir", sender, FhirRequest.messageId(request), clock.instant());
    }

    /** What a request wants to know within the same unit of work, after its writes. */
    interface After<T> {
        T apply(Tables tables, List<Written> written);
    }
}
