package dev.isoline.fhirapi;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.model.api.IQueryParameterAnd;
import ca.uhn.fhir.model.api.IQueryParameterOr;
import ca.uhn.fhir.model.api.IQueryParameterType;
import ca.uhn.fhir.rest.api.server.IBundleProvider;
import ca.uhn.fhir.rest.server.SimpleBundleProvider;
import dev.isoline.ledger.ResourceTable.Criterion;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import dev.isoline.resources.FhirJson;
import dev.isoline.resources.ResourceStore;
import dev.isoline.resources.SearchCondition;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Resource;

/** One search in the making: parameters, then a page of what meets them all. */
final class StoredSearch<R extends Resource> {

    static final int DEFAULT_COUNT = 50;
    static final int LARGEST_COUNT = 200;

    private final FhirGateway gateway;
    private final Class<R> type;
    private final List<Criterion> criteria = new ArrayList<>();

    StoredSearch(FhirGateway gateway, Class<R> type) {
        this.gateway = gateway;
        this.type = type;
    }

    /** Every repetition of a parameter must be met; null when it was not given. */
    StoredSearch<R> by(String name, IQueryParameterAnd<?> values) {
        if (values != null) {
            values.getValuesAsQueryTokens().forEach(alternatives -> by(name, alternatives));
        }
        return this;
    }

    IBundleProvider page(Integer count, Integer offset) {
        int size = count == null ? DEFAULT_COUNT : Math.min(count, LARGEST_COUNT);
        int from = offset == null ? 0 : offset;
        return gateway.read(
                tables -> {
                    var found = ResourceStore.search(tables, type, criteria, from, size);
                    var page = new SimpleBundleProvider(found);
                    page.setCurrentPageOffset(from);
                    page.setCurrentPageSize(size);
                    page.setSize(tables.resources().count(type.getSimpleName(), criteria));
                    return page;
                });
    }

    private void by(String name, IQueryParameterOr<?> alternatives) {
        var context = FhirJson.CONTEXT;
        var values = alternatives.getValuesAsQueryTokens();
        String modifier = values.isEmpty() ? "" : modifier(values.get(0), context);
        String joined =
                values.stream()
                        .map(v -> v.getValueAsQueryToken(context))
                        .collect(Collectors.joining(","));
        criteria.add(SearchCondition.of(type.getSimpleName(), name + modifier, joined));
    }

    private String modifier(IQueryParameterType value, FhirContext context) {
        if (value.getMissing() != null) {
            throw new ContentError(
                    Problem.error(
                            Problem.Kind.VALUE,
                            type.getSimpleName(),
                            "The modifier :missing is not supported."));
        }
        return WriteEntry.orEmpty(value.getQueryParameterQualifier());
    }
}
