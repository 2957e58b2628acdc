package dev.isoline.ledger;

import dev.isoline.ledger.FoundBy.Key;
import dev.isoline.order.OrderState;
import dev.isoline.order.Problem;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** {@code orders}: one row per order, its numbers and where it stands. */
public final class OrderTable {

    /**
     * @param id the id of its ServiceRequest
     * @param sender name of the configured sender it came from
     * @param placerSystem namespace of the placer order number
     * @param placer placer order number
     * @param filler filler order number, ours
     * @param accession accession number, at most 16 characters
     * @param patientId id of its Patient
     * @param reasons why it is held or refused; empty when it is not
     * @param dueAt when the report is owed, null until the recording is in
     */
    public record OrderRow(
            String id,
            String sender,
            String placerSystem,
            String placer,
            String filler,
            String accession,
            String patientId,
            OrderState state,
            List<Problem> reasons,
            Instant dueAt,
            Instant updatedAt) {

        public OrderRow with(OrderState state, Instant at) {
            return with(state, reasons, dueAt, at);
        }

        public OrderRow with(List<Problem> reasons) {
            return with(state, reasons, dueAt, updatedAt);
        }

        public OrderRow due(Instant dueAt) {
            return with(state, reasons, dueAt, updatedAt);
        }

        private OrderRow with(
                OrderState state, List<Problem> reasons, Instant dueAt, Instant updatedAt) {
            return new OrderRow(
                    id,
                    sender,
                    placerSystem,
                    placer,
                    filler,
                    accession,
                    patientId,
                    state,
                    reasons,
                    dueAt,
                    updatedAt);
        }
    }

    private static final String SELECT =
            "SELECT id, sender, placer_system, placer, filler, accession, patient_id, state,"
                    + " reasons, due_at, updated_at FROM orders WHERE ";

    private static final String NUMBER = "order.number";
    private static final String PATIENT = "order.patient";

    private final Session session;

    OrderTable(Session session) {
        this.session = session;
    }

    /** Fails when the placer order number is taken. */
    public void insert(OrderRow row) {
        long num =
                session.number(
                        "INSERT INTO orders (id, sender, placer_system, placer, filler, accession,"
                                + " patient_id, state, reasons, due_at, updated_at)"
                                + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) RETURNING num",
                        row.id(),
                        row.sender(),
                        row.placerSystem(),
                        row.placer(),
                        row.filler(),
                        row.accession(),
                        row.patientId(),
                        row.state(),
                        ReasonsJson.write(row.reasons()),
                        row.dueAt(),
                        row.updatedAt());
        var foundBy = new FoundBy(session);
        foundBy.add(num, new Key(NUMBER, "filler", row.filler()));
        foundBy.add(num, new Key(NUMBER, "accession", row.accession()));
        foundBy.add(num, new Key(PATIENT, "", row.patientId()));
    }

    /** Where it stands; its numbers and its patient are what they were. */
    public void update(OrderRow row) {
        session.update(
                "UPDATE orders SET state = ?, reasons = ?, due_at = ?, updated_at = ?"
                        + " WHERE id = ?",
                row.state(),
                ReasonsJson.write(row.reasons()),
                row.dueAt(),
                row.updatedAt(),
                row.id());
    }

    /** All orders of one patient become another's. */
    public void subsume(String patientId, String survivorId) {
        session.update(
                "UPDATE orders SET patient_id = ? WHERE num IN " + FoundBy.OWNERS,
                survivorId,
                patientId,
                PATIENT);
        session.update(
                "UPDATE found_by SET value = ? WHERE value = ? AND param = ?",
                survivorId,
                patientId,
                PATIENT);
    }

    public Optional<OrderRow> byId(String id) {
        return session.first(OrderTable::order, SELECT + "id = ?", id);
    }

    public Optional<OrderRow> byPlacer(String placerSystem, String placer) {
        return session.first(
                OrderTable::order,
                SELECT + "placer = ? AND placer_system = ?",
                placer,
                placerSystem);
    }

    /** Orders whose placer, filler or accession number is this; more than one is ambiguous. */
    public List<OrderRow> byNumber(String number) {
        return session.list(
                OrderTable::order,
                SELECT + "placer = ? OR num IN " + FoundBy.OWNERS + " ORDER BY id",
                number,
                number,
                NUMBER);
    }

    public List<OrderRow> byPatient(String patientId) {
        return session.list(
                OrderTable::order,
                SELECT + "num IN " + FoundBy.OWNERS + " ORDER BY updated_at, id",
                patientId,
                PATIENT);
    }

    /** Longest in this state first. */
    public List<OrderRow> byState(OrderState state, int limit) {
        return session.list(
                OrderTable::order,
                SELECT + "state = ? ORDER BY updated_at, id LIMIT ?",
                state,
                limit);
    }

    private static OrderRow order(ResultSet row) throws SQLException {
        return new OrderRow(
                row.getString(1),
                row.getString(2),
                row.getString(3),
                row.getString(4),
                row.getString(5),
                row.getString(6),
                row.getString(7),
                OrderState.valueOf(row.getString(8)),
                ReasonsJson.read(row.getString(9)),
                Session.instant(row, 10),
                Session.instant(row, 11));
    }
}
