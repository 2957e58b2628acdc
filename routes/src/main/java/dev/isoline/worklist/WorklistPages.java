package dev.isoline.worklist;

import dev.isoline.dicom.DataSet;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.WorklistSearch;
import dev.isoline.ledger.WorklistTable.Found;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;

/**
 * The items a search finds, page by page: the first page is short, so that the first answer comes
 * soon, and no read of the ledger lasts long.
 */
final class WorklistPages implements Iterator<DataSet> {

    private static final int FIRST = 16;
    private static final int LONGEST = 512;

    private final Ledger ledger;
    private final WorklistSearch search;
    private int size = FIRST;
    private Found last;
    private Iterator<Found> page = List.<Found>of().iterator();
    private boolean ended;

    WorklistPages(Ledger ledger, WorklistSearch search) {
        this.ledger = ledger;
        this.search = search;
    }

    @Override
    public boolean hasNext() {
        if (!page.hasNext() && !ended) {
            List<Found> rows = ledger.read(t -> t.worklist().page(search, last, size));
            ended = rows.size() < size;
            size = Math.min(2 * size, LONGEST);
            page = rows.iterator();
        }
        return page.hasNext();
    }

    @Override
    public DataSet next() {
        if (!hasNext()) {
            throw new NoSuchElementException();
        }
        last = page.next();
        return StoredItem.decode(last.item());
    }
}
