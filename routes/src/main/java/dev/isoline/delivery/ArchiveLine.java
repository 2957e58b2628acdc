package dev.isoline.delivery;

import dev.isoline.dicom.spi.CommitmentRequest;
import dev.isoline.dicom.spi.CommitmentResults;
import dev.isoline.dicom.spi.Status;
import java.io.IOException;
import java.nio.file.Path;

/** The way to one archive, an application entity. */
public interface ArchiveLine {

    /** C-STORE of one file. */
    Status store(Path file, String sopClass) throws IOException;

    /**
     * N-ACTION of storage commitment.
     *
     * @param results takes the report when it comes on the same association
     */
    Status requestCommitment(CommitmentRequest request, CommitmentResults results)
            throws IOException;
}
