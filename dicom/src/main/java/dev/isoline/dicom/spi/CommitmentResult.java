package dev.isoline.dicom.spi;

import java.util.List;

/**
 * What became of a request for storage commitment, PS3.4 table J.3-2. Committed and failed together
 * are every instance of the request.
 *
 * @param transaction Transaction UID of the request
 * @param committed instances the archive is responsible for now
 * @param failed those it is not
 */
public record CommitmentResult(
        String transaction, List<SopReference> committed, List<Failure> failed) {

    public CommitmentResult {
        committed = List.copyOf(committed);
        failed = List.copyOf(failed);
    }

    /**
     * An instance that was not committed.
     *
     * @param reference the instance
     * @param reason Failure Reason (0008,1197), PS3.3 C.14.1.1, such as 0112H for one that is not
     *     there
     */
    public record Failure(SopReference reference, Status reason) {}
}
