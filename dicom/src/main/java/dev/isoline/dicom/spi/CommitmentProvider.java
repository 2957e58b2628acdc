package dev.isoline.dicom.spi;

import java.io.IOException;
import java.util.Optional;

/** The archive's side of storage commitment, PS3.4 J.3. */
public interface CommitmentProvider {

    /**
     * An N-ACTION arrived.
     *
     * @return {@link Status#SUCCESS} once the request is stored; anything else ends the transaction
     */
    Status request(Peer peer, CommitmentRequest request) throws IOException;

    /**
     * Called after the request was answered with success; an exception ends the association.
     *
     * @return the result to report on this association, or empty where it is reported later on a
     *     new one ({@link Association#reportCommitment})
     */
    default Optional<CommitmentResult> result(Peer peer, CommitmentRequest request)
            throws IOException {
        return Optional.empty();
    }

    /**
     * How the requestor answered the result reported on this association.
     *
     * @param answer its status; 0110H where the association ended before it answered
     */
    default void reported(CommitmentResult result, Status answer) {}
}
