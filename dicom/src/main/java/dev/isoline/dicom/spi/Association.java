package dev.isoline.dicom.spi;

import dev.isoline.dicom.DataSet;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;

/**
 * An established association, seen by its requestor; PS3.7 chapter 9 and 10.
 *
 * <p>One thread at a time uses it, but for {@link #abort}. An operation whose SOP class has no
 * accepted context ends in a {@link ContextNotAccepted} and leaves the association usable; any
 * other exception ends it.
 */
public interface Association extends AutoCloseable {

    /** Who answered. */
    Peer peer();

    /** The presentation contexts the peer accepted, in the order they were offered. */
    List<AcceptedContext> accepted();

    /** True where a context for the abstract syntax was accepted. */
    default boolean accepts(String abstractSyntax) {
        return accepted().stream().anyMatch(c -> c.abstractSyntax().equals(abstractSyntax));
    }

    /** C-ECHO, PS3.7 9.1.5. */
    Status echo() throws IOException;

    /**
     * C-STORE of a Part 10 file, PS3.7 9.1.1: streamed, as it is where its transfer syntax was
     * accepted, else re-encoded in one that was. A failure may come before all was sent.
     *
     * @throws dev.isoline.dicom.DicomException where the file breaks a rule
     */
    Status store(Path file) throws IOException;

    /** C-STORE of a data set; its bulk values are streamed. */
    Status store(DataSet object) throws IOException;

    /**
     * C-FIND, PS3.7 9.1.2: hands the matches over one by one and cancels when asked to.
     *
     * @param sopClass such as {@link SopClass#MODALITY_WORKLIST_FIND}
     * @param keys the identifier of the request
     * @return the status of the final response
     */
    Status find(String sopClass, DataSet keys, Matches matches) throws IOException;

    /**
     * N-ACTION of the Storage Commitment Push Model, PS3.4 J.3.2. Success means only that the
     * request was received; anything else ends the transaction.
     */
    Status requestCommitment(CommitmentRequest request) throws IOException;

    /**
     * Waits for an N-EVENT-REPORT on this association, PS3.4 J.3.3, hands it to the {@link
     * CommitmentResults} the association was opened with and answers it.
     *
     * @return false where none came in time or the peer released the association
     */
    boolean awaitCommitment(Duration atMost) throws IOException;

    /**
     * N-EVENT-REPORT of the Storage Commitment Push Model, on an association opened with {@link
     * Offer#commitmentResults()}.
     */
    Status reportCommitment(CommitmentResult result) throws IOException;

    /** Ends the association in order, PS3.8 7.2; does nothing where it has ended. */
    void release() throws IOException;

    /** Ends it at once, PS3.8 7.3; from any thread, and does nothing where it has ended. */
    void abort();

    /** Releases; a peer that does not take part in that is no error any more. */
    @Override
    void close();
}
