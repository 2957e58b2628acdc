package dev.isoline.conformance.validator;

import java.util.List;
import java.util.Map;

/**
 * What pydicom reads in a DICOM waveform object.
 *
 * @param groups multiplex groups; the rest describes the first
 * @param samples per channel
 * @param microvoltsOff largest distance of a calibrated sample from the expected calibration
 * @param points samples that annotations mark, by scheme and code of what they mark; the first
 *     sample is 1
 * @param stored samples as stored, channels interleaved, 16-bit little endian
 */
public record Waveform(
        int groups,
        int channels,
        long samples,
        double hz,
        double microvoltsOff,
        Map<String, List<Long>> points,
        byte[] stored) {}
