package dev.isoline.gateway;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.ledger.OrderTable.OrderRow;
import dev.isoline.mllp.MllpClient;
import dev.isoline.order.OrderState;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;
import org.hl7.fhir.r4.model.Patient;
import org.junit.jupiter.api.Test;

/** Many clinics at once, with the same patients. */
class ManyOrdersTest extends AssembledGateway {

    @Test
    void eight_connections_with_the_same_patients_store_every_order_once() throws Exception {
        var patients = IntStream.range(0, 50).mapToObj(i -> Clinic.patient()).toList();
        var pool = Executors.newFixedThreadPool(8);
        try {
            var senders = new ArrayList<Callable<List<Clinic>>>();
            for (int c = 0; c < 8; c++) {
                int offset = c;
                senders.add(() -> sendOrders(patients, offset));
            }
            for (var sent : pool.invokeAll(senders)) {
                for (Clinic order : sent.get()) {
                    assertThat(order(order.placer()).state()).isEqualTo(OrderState.READY);
                }
            }
        } finally {
            pool.shutdownNow();
        }
        for (Clinic patient : patients) {
            var stored =
                    search(
                            Patient.class,
                            "identifier=" + Clinic.MRN_SYSTEM + "%7C" + patient.mrn());
            assertThat(stored).hasSize(1);
            String id = stored.get(0).getIdElement().getIdPart();
            List<OrderRow> placed = ledger.read(t -> t.orders().byPatient(id));
            assertThat(placed).extracting(row -> row.placer()).hasSize(32).doesNotHaveDuplicates();
        }
    }

    /** 200 orders over one connection; the patients come in another sequence on each. */
    private static List<Clinic> sendOrders(List<Clinic> patients, int offset) throws Exception {
        var sent = new ArrayList<Clinic>();
        try (var client = MllpClient.connect("127.0.0.1", MLLP, Duration.ofSeconds(30))) {
            for (int i = 0; i < 200; i++) {
                var order = patients.get((i + 7 * offset) % patients.size()).anotherOrder();
                byte[] answer = client.send(order.order().getBytes(StandardCharsets.UTF_8));
                assertThat(Answer.of(new String(answer, StandardCharsets.UTF_8)).code())
                        .isEqualTo("AA");
                sent.add(order);
            }
        }
        return sent;
    }
}
