package dev.isoline.ledger;

import dev.isoline.ledger.DeliveryTable.NewDelivery;
import dev.isoline.ledger.MessageTable.NewMessage;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A process to be killed: eight threads write, and each prints a number only after the ledger has
 * acknowledged it. Arguments: JDBC URL (or -), data folder, prefix of the numbers.
 */
final class LedgerWriter {

    private static final int THREADS = 8;

    private LedgerWriter() {}

    public static void main(String[] arguments) {
        String url = arguments[0].equals("-") ? "" : arguments[0];
        Ledger ledger = LedgerFactory.open(url, "postgres", "", Path.of(arguments[1]));
        var next = new AtomicLong();
        for (int i = 0; i < THREADS; i++) {
            new Thread(() -> write(ledger, arguments[2], next)).start();
        }
    }

    private static void write(Ledger ledger, String prefix, AtomicLong next) {
        while (true) {
            String number = prefix + next.incrementAndGet();
            ledger.write(t -> store(t, number)).join();
            // One write call a line: a kill cannot tear it.
            System.out.print(number + "\n");
            System.out.flush();
        }
    }

    /** A message and the delivery it causes: both are there or neither is. */
    private static long store(Tables tables, String number) {
        byte[] raw = number.getBytes();
        long id =
                tables.messages()
                        .insert(
                                new NewMessage(
                                        "mllp", "A|B", number, "ORM^O01", "", raw, Instant.now()));
        tables.messages().answered(id, raw, "AA");
        return tables.deliveries()
                .add(new NewDelivery("x", number, "order", "a/b", raw, null, Instant.now()));
    }
}
