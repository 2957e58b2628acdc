package dev.isoline.dicom.spi;

import java.util.List;

/**
 * A request for storage commitment, PS3.4 table J.3-1.
 *
 * @param transaction Transaction UID (0008,1195); never used twice, and stored before it is sent
 * @param references Referenced SOP Sequence (0008,1199), each instance once
 */
public record CommitmentRequest(String transaction, List<SopReference> references) {

    public CommitmentRequest {
        references = List.copyOf(references);
    }
}
