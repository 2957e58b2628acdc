package dev.isoline.ledger;

import java.util.List;

/** {@code worklist}: what recorder stations are offered, one row per order. */
public final class WorklistTable {

    /**
     * @param start local date and time as the number {@code yyyymmddhhmmss}
     * @param name the patient's, in the form names are matched in
     * @param patientId Patient ID (0010,0020)
     * @param accession accession number
     * @param station AE title it is scheduled for; empty: any
     * @param item the worklist item, encoded
     */
    public record Entry(
            String orderId,
            long start,
            String name,
            String patientId,
            String accession,
            String station,
            byte[] item) {}

    /**
     * One row of a page.
     *
     * @param place where it stands in the search's order, to go on after it
     */
    public record Found(long id, Object place, byte[] item) {}

    private final Session session;

    WorklistTable(Session session) {
        this.session = session;
    }

    /** Adds the order's entry, or replaces it. */
    public void put(Entry entry) {
        session.update(
                "INSERT INTO worklist"
                        + " (order_id, start, name, patient_id, accession, station, item)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?)"
                        + " ON CONFLICT (order_id) DO UPDATE SET start = excluded.start,"
                        + " name = excluded.name, patient_id = excluded.patient_id,"
                        + " accession = excluded.accession, station = excluded.station,"
                        + " item = excluded.item",
                entry.orderId(),
                entry.start(),
                entry.name(),
                entry.patientId(),
                entry.accession(),
                entry.station(),
                entry.item());
    }

    public void remove(String orderId) {
        session.update("DELETE FROM worklist WHERE order_id = ?", orderId);
    }

    /**
     * The next rows of a search.
     *
     * @param after the last row of the page before; null for the first page
     */
    public List<Found> page(WorklistSearch search, Found after, int limit) {
        var query = new WorklistSql(search, after);
        return session.list(
                row -> new Found(row.getLong(1), query.place(row), row.getBytes(3)),
                query.text() + " LIMIT " + limit,
                query.values());
    }
}
