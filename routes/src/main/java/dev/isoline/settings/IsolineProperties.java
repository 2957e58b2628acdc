package dev.isoline.settings;

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
     * @param watch folder to take recordings from; none by default
     */
    public record Recordings(
            Path watch,
            @DefaultValue("1s") Duration sweep,
            @DefaultValue("2s") Duration pause,
            @DefaultValue("24h") Duration reportDue) {}

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
     * @param kind {@code fhir}, {@code mllp} or {@code folder}
     * @param url FHIR base, {@code mllp://host:port}, or the folder
     * @param receives {@code orders}, {@code status}, {@code results}, {@code objects}
     * @param application MSH-5 for it
     * @param facility MSH-6 for it
     * @param token bearer token it wants; empty: none
     */
    public record Destination(
            String kind,
            String url,
            @DefaultValue Set<String> receives,
            @DefaultValue("") String application,
            @DefaultValue("") String facility,
            @DefaultValue("") String token) {}
}
