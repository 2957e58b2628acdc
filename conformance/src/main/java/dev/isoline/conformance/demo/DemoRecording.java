package dev.isoline.conformance.demo;

import dev.isoline.synth.EcgPlan;
import dev.isoline.synth.TrueBeat;
import dev.isoline.synth.Truth;
import java.nio.file.Path;
import java.util.List;

/**
 * One recording and everything known about it.
 *
 * @param order placer order number
 * @param file as the recorder station hands it over
 * @param samples its samples as plain 16-bit words
 * @param beats every one of them
 * @param classified whether the file brings beat classes
 */
record DemoRecording(
        String order,
        Path file,
        Path samples,
        EcgPlan plan,
        List<TrueBeat> beats,
        Truth truth,
        boolean classified) {}
