package dev.isoline.conformance.demo;

/** The configuration file the demo starts the gateway with (docs/configuration.md). */
record GatewayConfiguration(
        DemoFolder folder,
        int http,
        int mllp,
        int dicom,
        int archivePort,
        String ternStreet,
        String harrowBayMllp,
        String harrowBayFhir,
        String sablePointMllp,
        String sablePointFhir) {

    /** AE title of the archive that commits itself. */
    static final String ARCHIVE = "TS_ARCHIVE";

    // spotless:off
    private static final String YAML =
            """
            server: { address: 127.0.0.1, port: %d }
            isoline:
              data: "%s"
              mllp: { host: 127.0.0.1, port: %d }
              dicom:
                host: 127.0.0.1
                port: %d
                peers:
                  harrow-bay-recorders:  { ae-title: HB_ECG_1, may: [WORKLIST] }
                  sable-point-recorders: { ae-title: SP_ECG_1, may: [WORKLIST] }
                  tern-street-archive:   { ae-title: %s, host: 127.0.0.1, port: %d, may: [COMMIT] }
              worklist:
                stations:
                  harrow-bay:  { ae-title: HB_ECG_1, name: "Recorder desk", location: "Room 4" }
                  sable-point: { ae-title: SP_ECG_1, name: "Recorder desk" }
              recordings: { watch: "%s", sweep: 500ms }
              delivery: { firstRetry: 200ms }
              clients: [recorder-station]
              senders:
                harrow-bay:
                  application: HBEHR
                  facility: HARROWBAY
                  authorities: { HARROWBAY: "urn:oid:2.999.10.1" }
                  zone: Europe/Lisbon
                  destinations: [harrow-bay-mllp, harrow-bay-fhir]
                sable-point:
                  zone: Europe/Lisbon
                  destinations: [sable-point-mllp, sable-point-fhir]
              destinations:
                tern-street:      { kind: fhir,   url: "%s", receives: [orders, status] }
                harrow-bay-mllp:  { kind: mllp,   url: "%s", receives: [status, results], application: HBEHR, facility: HARROWBAY }
                harrow-bay-fhir:  { kind: fhir,   url: "%s", receives: [status, results] }
                sable-point-mllp: { kind: mllp,   url: "%s", receives: [status, results], application: SPEHR, facility: SABLEPOINT }
                sable-point-fhir: { kind: fhir,   url: "%s", receives: [status, results] }
                archive:          { kind: folder, url: "%s", receives: [objects] }
                archive-dicom:    { kind: archive, peer: tern-street-archive, receives: [objects], commitment: { required: true } }
            """;
    // spotless:on

    String yaml() {
        return YAML.formatted(
                http,
                folder.path("gateway/data"),
                mllp,
                dicom,
                ARCHIVE,
                archivePort,
                folder.path("inbox"),
                ternStreet,
                harrowBayMllp,
                harrowBayFhir,
                sablePointMllp,
                sablePointFhir,
                folder.path("archive"));
    }
}
