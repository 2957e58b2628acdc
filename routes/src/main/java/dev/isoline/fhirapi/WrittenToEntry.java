package dev.isoline.fhirapi;

import java.util.Date;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;

/** What became of an entry to its entry of the transaction-response. */
final class WrittenToEntry {

    private WrittenToEntry() {}

    static BundleEntryComponent map(Written written) {
        var entry = new BundleEntryComponent();
        var stored = written.stored();
        entry.getResponse()
                .setStatus(written.created() ? "201 Created" : "200 OK")
                .setLocation(written.reference() + "/_history/" + stored.version())
                .setEtag("W/\"" + stored.version() + "\"")
                .setLastModified(Date.from(stored.updated()));
        if (!written.problems().isEmpty()) {
            entry.getResponse().setOutcome(ProblemsToOperationOutcome.accepted(written.problems()));
        }
        return entry;
    }
}
