package dev.isoline.fhirapi;

import ca.uhn.fhir.interceptor.api.Hook;
import ca.uhn.fhir.interceptor.api.Interceptor;
import ca.uhn.fhir.interceptor.api.Pointcut;
import ca.uhn.fhir.rest.api.server.RequestDetails;
import ca.uhn.fhir.rest.api.server.ResponseDetails;
import ca.uhn.fhir.rest.server.exceptions.BaseServerResponseException;
import dev.isoline.ledger.AuditTable.Event;
import dev.isoline.ledger.Ledger;
import java.time.Clock;
import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.CapabilityStatement;
import org.hl7.fhir.r4.model.OperationOutcome;

/** Who read or wrote which resource, on disk before the answer leaves. */
@Interceptor
public final class AuditInterceptor {

    private final Ledger ledger;
    private final Clock clock;

    AuditInterceptor(Ledger ledger, Clock clock) {
        this.ledger = ledger;
        this.clock = clock;
    }

    @Hook(Pointcut.SERVER_OUTGOING_RESPONSE)
    public void answered(RequestDetails request, IBaseResource resource, ResponseDetails response) {
        if (resource instanceof CapabilityStatement) {
            return;
        }
        List<String> entities = entities(request, resource).distinct().toList();
        store(request, entities, Integer.toString(response.getResponseCode()));
    }

    /** True: the server goes on to answer. */
    @Hook(Pointcut.SERVER_HANDLE_EXCEPTION)
    public boolean refused(RequestDetails request, BaseServerResponseException refusal) {
        store(request, List.of(asked(request)), Integer.toString(refusal.getStatusCode()));
        return true;
    }

    private void store(RequestDetails request, List<String> entities, String outcome) {
        String actor = FhirRequest.actor(request);
        String action = "fhir " + request.getRequestType();
        var at = clock.instant();
        ledger.write(
                        tables -> {
                            entities.forEach(
                                    e ->
                                            tables.audit()
                                                    .add(new Event(at, actor, action, e, outcome)));
                            return entities.size();
                        })
                .join();
    }

    private static Stream<String> entities(RequestDetails request, IBaseResource resource) {
        if (resource instanceof Bundle bundle) {
            return Stream.concat(
                    Stream.of(asked(request)),
                    bundle.getEntry().stream().flatMap(e -> entities(request, e)));
        }
        boolean stored = resource != null && !(resource instanceof OperationOutcome);
        return Stream.of(stored ? reference(resource) : asked(request));
    }

    private static Stream<String> entities(RequestDetails request, BundleEntryComponent entry) {
        return entry.hasResource()
                ? entities(request, entry.getResource())
                : Stream.of(entry.getResponse().getLocation().replaceFirst("/_history/.*", ""));
    }

    private static String reference(IBaseResource resource) {
        return resource.getIdElement().toUnqualifiedVersionless().getValue();
    }

    /** The address without its query, which may hold an identifier. */
    private static String asked(RequestDetails request) {
        if (request.getId() != null && request.getId().hasIdPart()) {
            return request.getResourceName() + "/" + request.getId().getIdPart();
        }
        return request.getResourceName() == null ? "Bundle" : request.getResourceName();
    }
}
