package dev.isoline.synth;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/** Header record of an EDF+C file: ASCII fields of fixed width (EDF+ specification, 2.1). */
record EdfHeader(EcgPlan plan, EdfIdentity identity, int annotationBytes) {

    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("dd.MM.yy");
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH.mm.ss");

    /** Fields of one signal, in header order after its label. */
    // spotless:off
    private record Signal(String label, String transducer, String dimension, String physicalMin, String physicalMax,
            String digitalMin, String digitalMax, String prefilter, String samples) {}

    void writeTo(OutputStream out) throws IOException {
        int signals = plan.leads().size() + 1;
        field(out, "0", 8);
        field(out, identity.patientField(), 80);
        field(out, identity.recordingField(), 80);
        field(out, DATE.format(identity.start()), 8);
        field(out, TIME.format(identity.start()), 8);
        field(out, String.valueOf(256 * (signals + 1)), 8);
        field(out, "EDF+C", 44);
        field(out, String.valueOf(plan.seconds()), 8);
        field(out, "1", 8);
        field(out, String.valueOf(signals), 4);
        each(out, 16, Signal::label);
        each(out, 80, Signal::transducer);
        each(out, 8, Signal::dimension);
        each(out, 8, Signal::physicalMin);
        each(out, 8, Signal::physicalMax);
        each(out, 8, Signal::digitalMin);
        each(out, 8, Signal::digitalMax);
        each(out, 80, Signal::prefilter);
        each(out, 8, Signal::samples);
        each(out, 32, s -> "");
    }

    private List<Signal> signals() {
        var annotations = new Signal("EDF Annotations", "", "", "-1", "1", "-32768", "32767", "",
                String.valueOf(annotationBytes / 2));
        return Stream.concat(plan.leads().stream().map(this::lead), Stream.of(annotations)).toList();
    }

    private Signal lead(String name) {
        return new Signal("ECG " + name, "AgCl electrodes", "uV", microvolts(EcgPlan.LOWEST), microvolts(EcgPlan.HIGHEST),
                String.valueOf(EcgPlan.LOWEST), String.valueOf(EcgPlan.HIGHEST), "HP:0.05Hz LP:100Hz",
                String.valueOf(plan.hz()));
    }
    // spotless:on

    private static String microvolts(int units) {
        return String.valueOf(units * 1000 / EcgPlan.UNITS_PER_MILLIVOLT);
    }

    private void each(OutputStream out, int width, Function<Signal, String> value)
            throws IOException {
        for (Signal signal : signals()) {
            field(out, value.apply(signal), width);
        }
    }

    private static void field(OutputStream out, String text, int width) throws IOException {
        if (text.length() > width) {
            throw new IllegalArgumentException("EDF header field over " + width + " characters");
        }
        out.write(String.format("%-" + width + "s", text).getBytes(StandardCharsets.US_ASCII));
    }
}
