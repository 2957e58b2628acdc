package dev.isoline.conformance.partner;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.spi.AeTitle;
import dev.isoline.dicom.spi.DicomEngine;
import dev.isoline.dicom.spi.Offer;
import dev.isoline.dicom.spi.Remote;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.dicom.spi.Status;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** A recorder station that asks whom it shall fit with a recorder: PS3.4 annex K, as SCU. */
public final class WorklistStation {

    private final Remote worklist;

    /**
     * @param title ours
     * @param called that of the worklist
     * @param port where it listens
     */
    public WorklistStation(String title, String called, int port) {
        worklist = Remote.of("127.0.0.1", port, new AeTitle(called), new AeTitle(title));
    }

    /** The matches, in the order they came. */
    public List<DataSet> find(DataSet keys) throws IOException {
        var matches = new ArrayList<DataSet>();
        try (var association = DicomEngine.find().associate(worklist, Offer.worklist())) {
            Status end =
                    association.find(
                            SopClass.MODALITY_WORKLIST_FIND,
                            keys,
                            (match, status) -> matches.add(match));
            if (!end.isSuccess()) {
                throw new IOException("The worklist query ended with " + end + ".");
            }
        }
        return matches;
    }
}
