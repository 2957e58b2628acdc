package dev.isoline.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.dicom.spi.AeTitle;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Refused;
import dev.isoline.settings.IsolineProperties.PeerMay;
import java.net.InetAddress;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.springframework.boot.context.properties.bind.Binder;
import org.springframework.boot.context.properties.source.MapConfigurationPropertySource;

/** Who may call, by docs/configuration.md. */
class DicomPeersTest {

    private static final Map<String, String> PEERS =
            Map.of(
                    "isoline.dicom.port", "11112",
                    "isoline.dicom.peers.desk.ae-title", "HB_ECG_1",
                    "isoline.dicom.peers.desk.may", "WORKLIST",
                    "isoline.dicom.peers.pacs.ae-title", "ARCHIVE",
                    "isoline.dicom.peers.pacs.calling", "ISOLINE_ARC");

    @Test
    void a_peer_may_what_its_settings_say_and_nothing_else() throws Exception {
        var peers = peers(PEERS);
        assertThat(peers.callers()).containsExactly("ARCHIVE", "HB_ECG_1");
        peers.require(calling("HB_ECG_1"), PeerMay.WORKLIST);
        assertThatThrownBy(() -> peers.require(calling("HB_ECG_1"), PeerMay.STORE))
                .isInstanceOfSatisfying(
                        Refused.class, e -> assertThat(e.status().code()).isEqualTo(0x0124));
        assertThatThrownBy(() -> peers.require(calling("NOBODY"), PeerMay.WORKLIST))
                .isInstanceOf(Refused.class);
    }

    @Test
    void an_archive_that_is_called_under_another_title_of_ours_may_call_that_title() {
        assertThat(peers(PEERS).calledTitles()).containsExactly("ISOLINE_ARC");
    }

    @Test
    void others_may_what_is_left_to_everybody() throws Exception {
        var peers =
                peers(Map.of("isoline.dicom.port", "0", "isoline.dicom.unknown-may", "WORKLIST"));
        assertThat(peers.callers()).isEmpty();
        peers.require(calling("ANYBODY"), PeerMay.WORKLIST);
        assertThatThrownBy(() -> peers.require(calling("ANYBODY"), PeerMay.STORE))
                .isInstanceOf(Refused.class);
    }

    @Test
    void a_listener_nobody_may_call_is_refused_at_the_start() {
        assertThatThrownBy(() -> peers(Map.of("isoline.dicom.port", "11112")))
                .hasMessageStartingWith("isoline.dicom.port is set, but nobody may call");
        assertThat(peers(Map.of("isoline.data", "d")).callers()).isEmpty();
    }

    private static DicomPeers peers(Map<String, String> settings) {
        return new DicomPeers(
                new Binder(new MapConfigurationPropertySource(settings))
                        .bindOrCreate("isoline", IsolineProperties.class));
    }

    private static Peer calling(String title) {
        return new Peer(
                new AeTitle(title),
                new AeTitle("ISOLINE"),
                InetAddress.getLoopbackAddress(),
                "",
                "",
                Optional.empty());
    }
}
