package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.annotation.Transaction;
import ca.uhn.fhir.rest.annotation.TransactionParam;
import ca.uhn.fhir.rest.api.server.RequestDetails;
import dev.isoline.ledger.Tables;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import java.util.Iterator;
import java.util.List;
import java.util.stream.IntStream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;

/** The transaction interaction (FHIR R4, 3.1.0.11): all entries are carried out, or none. */
public record TransactionProvider(FhirGateway gateway) {

    @Transaction
    public Bundle transaction(@TransactionParam Bundle bundle, RequestDetails request) {
        if (bundle.getType() != Bundle.BundleType.TRANSACTION) {
            throw refused("Bundle.type", "Only a Bundle of type transaction is taken here.");
        }
        List<BundleEntryComponent> entries = bundle.getEntry();
        List<WriteEntry> writes =
                IntStream.range(0, entries.size())
                        .filter(i -> !isGet(entries.get(i)))
                        .mapToObj(i -> TransactionEntry.read(entries.get(i), i))
                        .toList();
        return gateway.write(
                request, writes, (tables, written) -> response(tables, entries, written));
    }

    private static Bundle response(
            Tables tables, List<BundleEntryComponent> entries, List<Written> written) {
        var response = new Bundle().setType(Bundle.BundleType.TRANSACTIONRESPONSE);
        Iterator<Written> done = written.iterator();
        for (int i = 0; i < entries.size(); i++) {
            response.addEntry(
                    isGet(entries.get(i))
                            ? TransactionGet.answer(tables, entries.get(i), i)
                            : WrittenToEntry.map(done.next()));
        }
        return response;
    }

    private static boolean isGet(BundleEntryComponent entry) {
        return entry.getRequest().getMethod() == HTTPVerb.GET;
    }

    static ContentError refused(String path, String text) {
        return new ContentError(Problem.error(Problem.Kind.UNSUPPORTED_MESSAGE, path, text));
    }
}
