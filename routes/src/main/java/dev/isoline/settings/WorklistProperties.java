package dev.isoline.settings;

import java.util.Map;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * The configuration's {@code isoline.worklist} section.
 *
 * @param stations where recorders are fitted, by the sender whose orders are meant, {@code default}
 *     for all others; without one, any station may fit them
 */
@ConfigurationProperties("isoline.worklist")
public record WorklistProperties(@DefaultValue Map<String, StationSettings> stations) {

    /**
     * @param aeTitle Scheduled Station AE Title (0040,0001); empty: any station
     * @param name Scheduled Station Name (0040,0010)
     * @param location Scheduled Procedure Step Location (0040,0011) of orders that name none
     */
    public record StationSettings(
            @DefaultValue("") String aeTitle,
            @DefaultValue("") String name,
            @DefaultValue("") String location) {}
}
