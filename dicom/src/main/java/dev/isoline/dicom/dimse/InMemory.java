package dev.isoline.dicom.dimse;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DataSetReader;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.TransferSyntax;
import java.io.IOException;

/** Data sets small enough to be held: identifiers and references. */
final class InMemory {

    private static final ReadLimits LIMITS = new ReadLimits(32, 400_000, 16 << 20, 32 << 20);

    private InMemory() {}

    /**
     * @throws dev.isoline.dicom.DicomException where it breaks a rule
     */
    static DataSet read(byte[] bytes, TransferSyntax syntax) throws IOException {
        return DataSetReader.read(bytes, syntax, LIMITS);
    }
}
