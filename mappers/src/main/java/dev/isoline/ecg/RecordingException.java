package dev.isoline.ecg;

import java.io.IOException;

/**
 * The input is not a recording this program can read; the message is one sentence for its sender.
 */
public final class RecordingException extends IOException {

    private static final long serialVersionUID = 1;

    public RecordingException(String message) {
        super(message);
    }
}
