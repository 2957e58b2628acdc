package dev.isoline.fhirapi;

import ca.uhn.fhir.interceptor.api.Hook;
import ca.uhn.fhir.interceptor.api.Interceptor;
import ca.uhn.fhir.interceptor.api.Pointcut;
import ca.uhn.fhir.rest.api.EncodingEnum;
import ca.uhn.fhir.rest.server.RestfulServer;
import dev.isoline.ledger.Ledger;
import dev.isoline.resources.FhirJson;
import java.time.Clock;
import org.hl7.fhir.instance.model.api.IBaseConformance;
import org.hl7.fhir.r4.model.CapabilityStatement;

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
        registerInterceptor(new Truth());
    }

    /** Takes out of HAPI's CapabilityStatement what Isoline does not do. */
    @Interceptor
    public static final class Truth {

        @Hook(Pointcut.SERVER_CAPABILITY_STATEMENT_GENERATED)
        public void correct(IBaseConformance statement) {
            var capabilities = (CapabilityStatement) statement;
            capabilities.setPatchFormat(null);
        }
    }
}
