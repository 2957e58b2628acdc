package dev.isoline.dicom.spi;

import java.io.IOException;

/** Answers C-ECHO, PS3.7 9.1.5. */
@FunctionalInterface
public interface VerificationProvider {

    /** Answers every one with success. */
    VerificationProvider ALWAYS = peer -> Status.SUCCESS;

    Status echo(Peer peer) throws IOException;
}
