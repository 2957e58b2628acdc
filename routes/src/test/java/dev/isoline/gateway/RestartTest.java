package dev.isoline.gateway;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.app.IsolineApplication;
import dev.isoline.intake.Source;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.RecordingTable.RecordingRow;
import dev.isoline.ledger.RecordingTable.State;
import dev.isoline.order.OrderState;
import dev.isoline.recordings.RecordingReception;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.scheduling.concurrent.ThreadPoolTaskScheduler;

/** Two gateways, one after the other, on the same data. */
class RestartTest {

    @TempDir Path data;

    @Test
    void a_recording_that_was_in_is_analysed_after_the_next_start() throws IOException {
        var clinic = Clinic.patient();
        int mllp = AssembledGateway.freePort();
        RecordingRow taken;
        String answer;
        String order = clinic.order();
        try (var gateway = start(mllp)) {
            answer = Wire.exchange(mllp, Wire.frame(order), 1).get(0);
            gateway.getBean(ThreadPoolTaskScheduler.class).shutdown(); // nothing is analysed here
            var source = new Source("recording", "recorder-station", 0, Instant.now());
            taken =
                    gateway.getBean(RecordingReception.class)
                            .receive(
                                    new ByteArrayInputStream(Edf.of(clinic).bytes()),
                                    clinic.placer(),
                                    source)
                            .row();
            assertThat(taken.state()).isEqualTo(State.RECEIVED);
        }
        try (var gateway = start(mllp)) {
            var ledger = gateway.getBean(Ledger.class);
            AssembledGateway.await(
                    "the result",
                    () ->
                            ledger.read(t -> t.recordings().byId(taken.id())).orElseThrow().state()
                                    == State.ANALYSED);
            assertThat(ledger.read(t -> t.orders().byId(taken.orderId())).orElseThrow().state())
                    .isEqualTo(OrderState.REVIEW);
            assertThat(Wire.exchange(mllp, Wire.frame(order), 1)).containsExactly(answer);
        }
    }

    private ConfigurableApplicationContext start(int mllp) {
        return new SpringApplicationBuilder(IsolineApplication.class)
                .run(
                        "--server.port=0",
                        "--isoline.data=" + data,
                        "--isoline.mllp.port=" + mllp,
                        "--isoline.senders.harrow-bay.application=HBEHR");
    }
}
