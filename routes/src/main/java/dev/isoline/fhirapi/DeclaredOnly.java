package dev.isoline.fhirapi;

import ca.uhn.fhir.interceptor.api.Hook;
import ca.uhn.fhir.interceptor.api.Interceptor;
import ca.uhn.fhir.interceptor.api.Pointcut;
import ca.uhn.fhir.rest.api.RestOperationTypeEnum;
import ca.uhn.fhir.rest.api.server.RequestDetails;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import dev.isoline.resources.SearchIndex;
import java.util.Set;
import org.hl7.fhir.instance.model.api.IBaseConformance;
import org.hl7.fhir.r4.model.CapabilityStatement;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementRestResourceComponent;

/**
 * Makes what HAPI declares and what it does the same: it declares includes and operations that are
 * not there, and passes over search parameters it does not know.
 */
@Interceptor
public final class DeclaredOnly {

    /** Carried out by the server itself (FHIR R4, 3.1.0.1.6 to 3.1.0.1.11 and 3.1.1.5). */
    private static final Set<String> RESULT_PARAMETERS =
            Set.of("_count", "_offset", "_format", "_pretty", "_summary", "_elements");

    @Hook(Pointcut.SERVER_CAPABILITY_STATEMENT_GENERATED)
    public void correct(IBaseConformance statement) {
        var capabilities = (CapabilityStatement) statement;
        capabilities.setPatchFormat(null);
        var rest = capabilities.getRestFirstRep();
        rest.getResource().removeIf(r -> r.getType().equals("OperationDefinition"));
        for (CapabilityStatementRestResourceComponent type : rest.getResource()) {
            type.setSearchInclude(null).setSearchRevInclude(null);
        }
    }

    @Hook(Pointcut.SERVER_INCOMING_REQUEST_PRE_HANDLED)
    public void refuse(RequestDetails request, RestOperationTypeEnum operation) {
        if (operation != RestOperationTypeEnum.SEARCH_TYPE) {
            return;
        }
        String type = request.getResourceName();
        for (String name : request.getParameters().keySet()) {
            String bare = name.split("[:.]", 2)[0];
            if (!RESULT_PARAMETERS.contains(bare) && !SearchIndex.has(type, bare)) {
                throw new ContentError(
                        Problem.error(
                                Problem.Kind.UNSUPPORTED_MESSAGE,
                                type,
                                "Search by "
                                        + bare
                                        + " is not supported; supported are "
                                        + SearchIndex.names(type)
                                        + "."));
            }
        }
    }
}
