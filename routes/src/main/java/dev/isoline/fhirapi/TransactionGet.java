package dev.isoline.fhirapi;

import dev.isoline.ledger.ResourceTable.StoredResource;
import dev.isoline.ledger.Tables;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import dev.isoline.resources.FhirJson;
import dev.isoline.resources.SearchCondition;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;

/** A GET entry of a transaction: read or search, after its writes. */
final class TransactionGet {

    private TransactionGet() {}

    static BundleEntryComponent answer(Tables tables, BundleEntryComponent entry, int index) {
        String url = entry.getRequest().getUrl();
        String path = "Bundle.entry[" + index + "].request.url";
        var answer = new BundleEntryComponent();
        answer.getResponse().setStatus("200 OK");
        int query = url.indexOf('?');
        return query < 0
                ? answer.setResource(FhirJson.decode(stored(tables, url, path).json()))
                : answer.setResource(search(tables, url.substring(0, query), url.substring(query)));
    }

    private static StoredResource stored(Tables tables, String url, String path) {
        String[] parts = url.split("/");
        return java.util.Optional.of(parts)
                .filter(p -> p.length == 2)
                .flatMap(p -> tables.resources().get(p[0], p[1]))
                .orElseThrow(
                        () ->
                                new ContentError(
                                        Problem.error(
                                                Problem.Kind.UNKNOWN_KEY,
                                                path,
                                                "Nothing is stored at this address.")));
    }

    private static Bundle search(Tables tables, String type, String query) {
        var criteria = SearchCondition.parse(type, query.substring(1));
        List<StoredResource> found =
                tables.resources().search(type, criteria, 0, StoredSearch.LARGEST_COUNT);
        var bundle = new Bundle().setType(Bundle.BundleType.SEARCHSET);
        bundle.setTotal(tables.resources().count(type, criteria));
        for (StoredResource match : found) {
            bundle.addEntry()
                    .setResource(FhirJson.decode(match.json()))
                    .getSearch()
                    .setMode(Bundle.SearchEntryMode.MATCH);
        }
        return bundle;
    }
}
