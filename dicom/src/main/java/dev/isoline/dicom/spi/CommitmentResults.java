package dev.isoline.dicom.spi;

import java.io.IOException;

/** Takes the results of storage commitment, PS3.4 J.3.3. */
@FunctionalInterface
public interface CommitmentResults {

    /**
     * An N-EVENT-REPORT arrived, on the association of the request or on a new one, in some cases
     * hours later. What is not known is the caller's to answer: 0110H for a transaction that cannot
     * be found.
     *
     * @return {@link Status#SUCCESS} once the result is stored; an exception is answered as 0110H
     */
    Status result(Peer peer, CommitmentResult result) throws IOException;
}
