package dev.isoline.settings;

import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Threshold;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * The configuration file's {@code isoline} section; every setting is described in
 * docs/configuration.md.
 */
@ConfigurationProperties("isoline")
public record IsolineProperties(
        @DefaultValue("isoline-data") Path data,
        @DefaultValue LedgerSettings ledger,
        @DefaultValue Mllp mllp,
        @DefaultValue DicomSettings dicom,
        @DefaultValue Recordings recordings,
        @DefaultValue DeliverySettings delivery,
        @DefaultValue Sender defaultSender,
        @DefaultValue Map<String, Sender> senders,
        @DefaultValue("recorder-station") List<String> clients,
        @DefaultValue Map<String, Destination> destinations) {

    /** Empty url: SQLite in the data folder. */
    public record LedgerSettings(
            @DefaultValue("") String url,
            @DefaultValue("") String username,
            @DefaultValue("") String password) {}

    /**
     * @param idle how long a connection may be silent, also within a frame
     */
    public record Mllp(
            @DefaultValue("127.0.0.1") String host,
            @DefaultValue("2575") int port,
            @DefaultValue("60s") Duration idle,
            @DefaultValue("33554432") int maxFrameBytes) {}

    /**
     * Our application entity and those it knows.
     *
     * @param aeTitle ours, called and calling
     * @param port where it listens, 0 for any free one; none: it does not listen
     * @param tls name of a {@code spring.ssl.bundle}; empty: without TLS
     * @param mutualTls whoever calls has to show a certificate of those the bundle trusts
     * @param unknownMay what callers may do whose AE title is no peer's; nothing: they are rejected
     * @param associations open at the same time
     * @param idle how long an association may be silent
     * @param maxPdu longest P-DATA-TF we announce; 0: without limit
     * @param peers by a name of our own
     */
    public record DicomSettings(
            @DefaultValue("ISOLINE") String aeTitle,
            @DefaultValue("127.0.0.1") String host,
            Integer port,
            @DefaultValue("") String tls,
            @DefaultValue("true") boolean mutualTls,
            @DefaultValue Set<PeerMay> unknownMay,
            @DefaultValue("16") int associations,
            @DefaultValue("5m") Duration idle,
            @DefaultValue("262144") int maxPdu,
            @DefaultValue Map<String, Peer> peers) {}

    /** What a caller may do. */
    public enum PeerMay {
        /** Ask whether we are there; every peer may. */
        ECHO,
        /** Query the worklist. */
        WORKLIST,
        /** Store recordings. */
        STORE,
        /** Report the results of storage commitment. */
        COMMIT
    }

    /**
     * One application entity known to us.
     *
     * @param aeTitle its title, called and calling
     * @param host where it listens; empty: it is not called
     * @param port where it listens
     * @param tls name of a {@code spring.ssl.bundle} to call it with; empty: without TLS
     * @param calling the title we call ourselves; empty: our own
     * @param maxPdu longest P-DATA-TF we send it, whatever it announces; 0: what it announces
     * @param may what it may do when it calls
     */
    public record Peer(
            String aeTitle,
            @DefaultValue("") String host,
            @DefaultValue("104") int port,
            @DefaultValue("") String tls,
            @DefaultValue("") String calling,
            @DefaultValue("0") int maxPdu,
            @DefaultValue Set<PeerMay> may) {}

    /**
     * @param watch folder to take recordings from; none by default
     * @param pause shortest interval reported as one
     * @param thresholds of the analysis by name, those that differ from the published default
     * @param strips most short DICOM objects made of one recording
     * @param stripLength of each of them
     * @param salvage what is readable of a short or damaged recording is taken
     */
    public record Recordings(
            Path watch,
            @DefaultValue("1s") Duration sweep,
            @DefaultValue("2s") Duration pause,
            @DefaultValue Map<String, Double> thresholds,
            @DefaultValue("12") int strips,
            @DefaultValue("10s") Duration stripLength,
            @DefaultValue("24h") Duration reportDue,
            @DefaultValue("false") boolean salvage) {

        /** The thresholds of the analysis; the name that is unknown or out of range is told. */
        public AnalysisSettings analysis() {
            return AnalysisSettings.of(thresholds).with(Threshold.PAUSE, pause.toNanos() / 1e9);
        }
    }

    public record DeliverySettings(
            @DefaultValue("1s") Duration firstRetry,
            @DefaultValue("5m") Duration longestRetry,
            @DefaultValue("12") int attempts,
            @DefaultValue("30s") Duration timeout) {}

    /**
     * One sending system.
     *
     * @param application MSH-3.1 it is recognised by
     * @param facility MSH-4.1 it is recognised by
     * @param authority system of identifiers that come without an assigning authority; empty:
     *     refused
     * @param authorities system of each assigning authority by its namespace id (CX-4.1)
     * @param charset used when MSH-18 is empty
     * @param version used when MSH-12 is empty
     * @param zone of times without an offset
     * @param required names of {@code dev.isoline.order.Requirement}; empty: all of them
     * @param destinations where status and results of its orders go
     */
    public record Sender(
            @DefaultValue("") String application,
            @DefaultValue("") String facility,
            @DefaultValue("") String authority,
            @DefaultValue Map<String, String> authorities,
            @DefaultValue("UTF-8") String charset,
            @DefaultValue("2.5.1") String version,
            @DefaultValue("UTC") ZoneId zone,
            @DefaultValue Set<String> required,
            @DefaultValue List<String> destinations) {}

    /**
     * One receiving system.
     *
     * @param kind {@code fhir}, {@code mllp}, {@code folder}, {@code stow} or {@code archive}
     * @param url FHIR base, {@code mllp://host:port}, the folder, or the base of a DICOMweb service
     * @param peer name of the DICOM peer that is the archive
     * @param receives {@code orders}, {@code status}, {@code results}, {@code objects}
     * @param application MSH-5 for it
     * @param facility MSH-6 for it
     * @param token bearer token it wants; empty: none
     * @param tls name of a {@code spring.ssl.bundle} for HTTPS; empty: what the JDK trusts
     * @param timeout how long it may be silent; none: that of all deliveries
     * @param commitment whether an object counts as delivered only when the archive has committed
     *     itself to keep it
     */
    public record Destination(
            String kind,
            @DefaultValue("") String url,
            @DefaultValue("") String peer,
            @DefaultValue Set<String> receives,
            @DefaultValue("") String application,
            @DefaultValue("") String facility,
            @DefaultValue("") String token,
            @DefaultValue("") String tls,
            Duration timeout,
            @DefaultValue Commitment commitment) {}

    /**
     * Storage commitment (PS3.4 J.3).
     *
     * @param within how long the archive may take to report
     * @param linger how long we keep the association of a request open for a report that comes at
     *     once
     */
    public record Commitment(
            @DefaultValue("false") boolean required,
            @DefaultValue("24h") Duration within,
            @DefaultValue("5s") Duration linger) {}
}
