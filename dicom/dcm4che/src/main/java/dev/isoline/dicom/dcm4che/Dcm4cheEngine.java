package dev.isoline.dicom.dcm4che;

import dev.isoline.dicom.spi.Association;
import dev.isoline.dicom.spi.CommitmentResults;
import dev.isoline.dicom.spi.DicomEngine;
import dev.isoline.dicom.spi.Listener;
import dev.isoline.dicom.spi.Local;
import dev.isoline.dicom.spi.Offer;
import dev.isoline.dicom.spi.Remote;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.Status;
import java.io.IOException;

/** The engine that leaves PS3.7 and PS3.8 to dcm4che. */
public final class Dcm4cheEngine implements DicomEngine {

    private static final CommitmentResults NOBODY =
            (peer, result) -> Status.PROCESSING_FAILURE.because("no result is awaited here");

    @Override
    public String name() {
        return "dcm4che";
    }

    @Override
    public Association associate(Remote remote, Offer offer) throws IOException {
        return associate(remote, offer, NOBODY);
    }

    @Override
    public Association associate(Remote remote, Offer offer, CommitmentResults results)
            throws IOException {
        return Requestor.associate(remote, offer, results);
    }

    @Override
    public Listener listen(Local local, Services services) throws IOException {
        return new Acceptor(local, services);
    }
}
