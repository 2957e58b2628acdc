package dev.isoline.settings;

import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Refused;
import dev.isoline.dicom.spi.Status;
import dev.isoline.settings.IsolineProperties.DicomSettings;
import dev.isoline.settings.IsolineProperties.PeerMay;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;

/** The application entities known to us, and what each may do. */
@Component
public class DicomPeers {

    private final DicomSettings settings;

    /**
     * @throws IllegalArgumentException when we would listen for nobody
     */
    public DicomPeers(IsolineProperties properties) {
        this.settings = properties.dicom();
        if (settings.port() != null
                && settings.peers().isEmpty()
                && settings.unknownMay().isEmpty()) {
            throw new IllegalArgumentException(
                    "isoline.dicom.port is set, but nobody may call: name callers in"
                            + " isoline.dicom.peers, or say in isoline.dicom.unknown-may what"
                            + " others may do");
        }
    }

    /** Titles we call ourselves beside our own: an archive reports to the one that asked it. */
    public List<String> calledTitles() {
        return settings.peers().values().stream()
                .map(IsolineProperties.Peer::calling)
                .filter(title -> !title.isEmpty())
                .distinct()
                .sorted()
                .toList();
    }

    /** Titles that may associate; empty: any. */
    public List<String> callers() {
        return settings.unknownMay().isEmpty()
                ? settings.peers().values().stream()
                        .map(IsolineProperties.Peer::aeTitle)
                        .sorted()
                        .toList()
                : List.of();
    }

    /**
     * @throws Refused with 0124H, not authorized (PS3.7 9.1.1.1.9)
     */
    public void require(Peer peer, PeerMay what) throws Refused {
        if (!mayDo(peer.calling().value(), what)) {
            throw new Refused(Status.NOT_AUTHORIZED.because("not allowed for " + peer.calling()));
        }
    }

    private boolean mayDo(String title, PeerMay what) {
        var known =
                settings.peers().values().stream().filter(p -> p.aeTitle().equals(title)).toList();
        return known.isEmpty()
                ? settings.unknownMay().contains(what)
                : known.stream().anyMatch(p -> p.may().contains(what));
    }

    /**
     * The peer of that name.
     *
     * @throws IllegalArgumentException names the setting at fault
     */
    public IsolineProperties.Peer byName(String name) {
        Map<String, IsolineProperties.Peer> peers = settings.peers();
        if (!peers.containsKey(name)) {
            throw new IllegalArgumentException("isoline.dicom.peers has no peer " + name);
        }
        return peers.get(name);
    }
}
