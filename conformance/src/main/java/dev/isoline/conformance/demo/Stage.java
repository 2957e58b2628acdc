package dev.isoline.conformance.demo;

import dev.isoline.conformance.partner.FhirPartner;
import dev.isoline.conformance.partner.StorageArchive;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;

/** The gateway and its partners, all on free loopback ports. */
final class Stage implements Closeable {

    private final DemoFolder folder;
    private final Clinic harrowBay;
    private final Clinic sablePoint;
    private final FhirPartner ternStreet;
    private final int http = Ports.free();
    private final int mllp = Ports.free();
    private final int dicom = Ports.free();
    private final StorageArchive archive;
    private GatewayProcess gateway;

    Stage(DemoFolder folder) throws IOException {
        this.folder = folder;
        this.harrowBay = Clinic.open("harrow-bay", "HB-1001");
        this.sablePoint = Clinic.open("sable-point", "SP-2002");
        this.ternStreet = new FhirPartner();
        this.archive =
                new StorageArchive(
                        GatewayConfiguration.ARCHIVE,
                        StationWorklists.CALLED,
                        dicom,
                        folder.path("archive-dicom"));
    }

    void startGateway(Path launcher) throws IOException {
        var configuration =
                new GatewayConfiguration(
                        folder,
                        http,
                        mllp,
                        dicom,
                        archive.port(),
                        ternStreet.url(),
                        harrowBay.mllp().url(),
                        harrowBay.fhir().url(),
                        sablePoint.mllp().url(),
                        sablePoint.fhir().url());
        Path file = folder.write("gateway/isoline.yaml", configuration.yaml());
        gateway = GatewayProcess.start(launcher, file, folder.path("gateway/gateway.log"));
    }

    Credentials awaitReadiness() throws DemoFailure, IOException, InterruptedException {
        gateway.awaitReadiness(http);
        return Credentials.read(folder.path("gateway/data/credentials"));
    }

    DemoFolder folder() {
        return folder;
    }

    Clinic harrowBay() {
        return harrowBay;
    }

    Clinic sablePoint() {
        return sablePoint;
    }

    FhirPartner ternStreet() {
        return ternStreet;
    }

    StorageArchive archive() {
        return archive;
    }

    int dicomPort() {
        return dicom;
    }

    int mllpPort() {
        return mllp;
    }

    String httpBase() {
        return "http://127.0.0.1:" + http;
    }

    @Override
    public void close() throws IOException {
        if (gateway != null) {
            gateway.close();
        }
        harrowBay.close();
        sablePoint.close();
        ternStreet.close();
        archive.close();
    }
}
