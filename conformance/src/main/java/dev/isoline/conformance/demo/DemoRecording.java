package dev.isoline.conformance.demo;

import dev.isoline.conformance.synth.EcgPlan;
import dev.isoline.conformance.synth.Truth;
import java.nio.file.Path;

/**
 * One recording and everything known about it.
 *
 * @param order placer order number
 * @param file as the recorder station hands it over
 * @param samples its samples as plain 16-bit words
 * @param classified whether the file brings beat classes
 */
record DemoRecording(
        String order, Path file, Path samples, EcgPlan plan, Truth truth, boolean classified) {}
