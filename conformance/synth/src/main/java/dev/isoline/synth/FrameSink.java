package dev.isoline.synth;

import java.io.IOException;

/** Takes a recording frame by frame. */
@FunctionalInterface
public interface FrameSink {

    /**
     * @param samples one sample per lead at one instant; valid only during the call
     */
    void frame(int[] samples) throws IOException;
}
