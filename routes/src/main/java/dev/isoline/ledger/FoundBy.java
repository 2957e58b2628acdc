package dev.isoline.ledger;

import java.util.List;

/** {@code found_by}: the values by which resources and orders are found. */
record FoundBy(Session session) {

    /**
     * @param param the kind of thing and what is told of it, such as {@code Patient.identifier}
     * @param system tells values apart that are the same by chance; empty when nothing does
     */
    record Key(String param, String system, String value) {}

    /** Who is found by a value under a parameter; the two are bound in this order. */
    static final String OWNERS = "(SELECT owner FROM found_by WHERE value = ? AND param = ?)";

    void add(long owner, Key key) {
        addAll(owner, List.of(key));
    }

    void addAll(long owner, List<Key> keys) {
        session.updateAll(
                "INSERT INTO found_by (value, param, system, owner) VALUES (?, ?, ?, ?)",
                keys.stream().map(key -> row(owner, key)).toList());
    }

    void removeAll(long owner, List<Key> keys) {
        session.updateAll(
                "DELETE FROM found_by WHERE value = ? AND param = ? AND system = ? AND owner = ?",
                keys.stream().map(key -> row(owner, key)).toList());
    }

    private static Object[] row(long owner, Key key) {
        return new Object[] {key.value(), key.param(), key.system(), owner};
    }
}
