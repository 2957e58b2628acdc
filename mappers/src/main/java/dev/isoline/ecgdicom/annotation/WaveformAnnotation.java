package dev.isoline.ecgdicom.annotation;

import dev.isoline.ecgdicom.OrderContext.Code;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * One item of Waveform Annotation Sequence (0040,B020), PS3.3 table C.10-11; of all channels.
 *
 * @param text free text; empty where there is a concept
 * @param concept what was found or measured; {@link Code#NONE} where there is a text
 * @param modifier without which the concept is incomplete
 * @param measurement value of the concept
 * @param range how the positions are to be read; empty when the whole object is meant
 * @param positions in samples, the first one is 1
 * @param group Annotation Group Number (0040,A180); 0 for none
 */
public record WaveformAnnotation(
        String text,
        Code concept,
        Optional<Code> modifier,
        Optional<Measurement> measurement,
        Optional<Range> range,
        long[] positions,
        int group) {

    /** Of what somebody marked in the recording before the program read it. */
    static final int BROUGHT = 1;

    /** Of what the program found and measured. */
    static final int COMPUTED = 2;

    private static final long[] NOWHERE = {};

    /** Temporal Range Type (0040,A130). */
    public enum Range {
        POINT,
        MULTIPOINT,
        SEGMENT,
        MULTISEGMENT
    }

    /** A number and its unit, a code of UCUM. */
    public record Measurement(double value, Code unit) {}

    /** Of the whole object. */
    public static WaveformAnnotation ofText(String text) {
        return new WaveformAnnotation(
                text, Code.NONE, Optional.empty(), Optional.empty(), Optional.empty(), NOWHERE, 0);
    }

    static WaveformAnnotation of(Code concept) {
        return new WaveformAnnotation(
                "", concept, Optional.empty(), Optional.empty(), Optional.empty(), NOWHERE, 0);
    }

    WaveformAnnotation at(Range type, long... where) {
        return new WaveformAnnotation(
                text, concept, modifier, measurement, Optional.of(type), where, group);
    }

    WaveformAnnotation in(int number) {
        return new WaveformAnnotation(
                text, concept, modifier, measurement, range, positions, number);
    }

    WaveformAnnotation of(double value, Code unit) {
        return new WaveformAnnotation(
                text,
                concept,
                modifier,
                Optional.of(new Measurement(value, unit)),
                range,
                positions,
                group);
    }

    WaveformAnnotation modifiedBy(Code code) {
        return new WaveformAnnotation(
                text, concept, Optional.of(code), measurement, range, positions, group);
    }

    /** All that it says: two that say the same have the same text. */
    @Override
    public String toString() {
        String where = Arrays.toString(positions);
        return List.of(text, concept, modifier, measurement, range, where, group).toString();
    }

    /** Whether it is a text and no concept; the two exclude each other. */
    public boolean isText() {
        return !text.isEmpty();
    }
}
