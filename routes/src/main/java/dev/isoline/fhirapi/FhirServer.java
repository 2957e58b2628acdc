package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.api.EncodingEnum;
import ca.uhn.fhir.rest.server.RestfulServer;
import dev.isoline.ledger.Ledger;
import dev.isoline.resources.FhirJson;
import java.time.Clock;

/** The FHIR R4 server: HAPI's, with the interactions and interceptors of Isoline. */
final class FhirServer extends RestfulServer {

    private static final long serialVersionUID = 1;

    FhirServer(FhirGateway gateway, FhirValidation validation, Ledger ledger, Clock clock) {
        super(FhirJson.CONTEXT);
        setServerName("Isoline");
        setImplementationDescription("Isoline interoperability gateway");
        setDefaultResponseEncoding(EncodingEnum.JSON);
        setResourceProviders(java.util.List.copyOf(Interactions.providers(gateway)));
        registerProvider(new TransactionProvider(gateway));
        registerInterceptor(new ValidationInterceptor(validation));
        registerInterceptor(new ErrorInterceptor());
        registerInterceptor(new AuditInterceptor(ledger, clock));
        registerInterceptor(new DeclaredOnly());
    }
}
