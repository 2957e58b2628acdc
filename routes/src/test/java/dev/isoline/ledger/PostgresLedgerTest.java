package dev.isoline.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.ledger.DeliveryTable.DeliveryRow;
import dev.isoline.ledger.DeliveryTable.NewDelivery;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/** The contract on PostgreSQL, and two nodes on one database. */
class PostgresLedgerTest extends LedgerContract {

    private String url;

    @Override
    Ledger open() throws Exception {
        url = PostgresServer.newDatabase();
        return node();
    }

    private Ledger node() {
        return LedgerFactory.open(url, "postgres", "", null);
    }

    @Test
    void two_nodes_claim_no_delivery_twice() throws Exception {
        try (Ledger one = node();
                Ledger two = node()) {
            for (int i = 0; i < 200; i++) {
                var delivery = delivery("o" + i);
                one.write(t -> t.deliveries().add(delivery)).get(30, TimeUnit.SECONDS);
            }
            Function<Tables, List<DeliveryRow>> claim =
                    t -> t.deliveries().claim("x", NOON, NOON.plusSeconds(60), 3);
            var claims = new ArrayList<CompletableFuture<List<DeliveryRow>>>();
            for (int i = 0; i < 100; i++) {
                claims.add(one.write(claim));
                claims.add(two.write(claim));
            }
            var claimed = new ArrayList<Long>();
            for (var future : claims) {
                future.get(30, TimeUnit.SECONDS).forEach(row -> claimed.add(row.id()));
            }
            assertThat(claimed)
                    .containsExactlyInAnyOrderElementsOf(
                            LongStream.rangeClosed(1, 200).boxed().toList());
        }
    }

    @Test
    void two_nodes_append_to_one_lane_and_one_resource_without_loss() throws Exception {
        try (Ledger one = node();
                Ledger two = node()) {
            var writes = new ArrayList<CompletableFuture<Integer>>();
            for (int i = 0; i < 100; i++) {
                writes.add(both(i % 2 == 0 ? one : two));
            }
            var versions = new ArrayList<Integer>();
            for (var write : writes) {
                versions.add(write.get(30, TimeUnit.SECONDS));
            }
            assertThat(versions)
                    .containsExactlyInAnyOrderElementsOf(
                            IntStream.rangeClosed(1, 100).boxed().toList());
            List<DeliveryRow> lane = one.read(t -> t.deliveries().ofOrder("o"));
            assertThat(lane).hasSize(100);
        }
    }

    private static CompletableFuture<Integer> both(Ledger node) {
        var delivery = delivery("o");
        return node.write(
                t -> {
                    t.deliveries().add(delivery);
                    return t.resources().put("Patient", "p", "{}", List.of(), NOON).version();
                });
    }

    private static NewDelivery delivery(String order) {
        return new NewDelivery("x", order, "status", "a/b", new byte[1], null, NOON);
    }
}
