package dev.isoline.dicom.json;

import dev.isoline.dicom.BulkValue;
import dev.isoline.dicom.DicomException;
import java.io.IOException;

/** Where the values are that a JSON names by BulkDataURI, PS3.18 F.2.6. */
public interface BulkDataSource {

    /** The value behind a URI, which is the sender's and not to be trusted. */
    BulkValue at(int tag, String uri) throws IOException;

    /** Refuses every reference. */
    BulkDataSource NONE =
            (tag, uri) -> {
                throw new DicomException(tag, "is a BulkDataURI, which is not accepted here");
            };
}
