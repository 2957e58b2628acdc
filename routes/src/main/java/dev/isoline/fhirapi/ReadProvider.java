package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.annotation.IdParam;
import ca.uhn.fhir.rest.annotation.Read;
import ca.uhn.fhir.rest.server.IResourceProvider;
import ca.uhn.fhir.rest.server.exceptions.ResourceNotFoundException;
import dev.isoline.ledger.Tables;
import dev.isoline.resources.ResourceStore;
import java.util.Optional;
import org.hl7.fhir.r4.model.IdType;
import org.hl7.fhir.r4.model.Resource;

/** Read and vread of one type (FHIR R4, 3.1.0.1 and 3.1.0.2). */
public record ReadProvider<R extends Resource>(Class<R> type, FhirGateway gateway)
        implements IResourceProvider {

    @Override
    public Class<R> getResourceType() {
        return type;
    }

    /** A version is part of the id when one is asked for. */
    @Read(version = true)
    public R read(@IdParam IdType id) {
        return gateway.read(tables -> find(tables, id))
                .orElseThrow(
                        () -> new ResourceNotFoundException("Nothing is stored at this address."));
    }

    private Optional<R> find(Tables tables, IdType id) {
        if (!id.hasVersionIdPart()) {
            return ResourceStore.get(tables, type, id.getIdPart());
        }
        return id.getVersionIdPart().matches("\\d{1,9}")
                ? ResourceStore.version(
                        tables, type, id.getIdPart(), id.getVersionIdPartAsLong().intValue())
                : Optional.empty();
    }
}
