package dev.isoline.ecgdicom;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Optional;

/**
 * What a recording's file does not say about itself.
 *
 * @param contentId stands for the content, such as the SHA-256 of the file: UIDs are derived from
 *     it, so that the same file makes the same objects
 * @param zone where the recorder's clock stood
 * @param start used where the recording names no start
 */
public record RecordingContext(String contentId, ZoneId zone, Optional<LocalDateTime> start) {}
