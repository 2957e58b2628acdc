package dev.isoline.conformance.demo;

/** The configuration file the demo starts the gateway with (docs/configuration.md). */
record GatewayConfiguration(
        DemoFolder folder,
        int http,
        int mllp,
        String ternStreet,
        String harrowBayMllp,
        String harrowBayFhir,
        String sablePointMllp,
        String sablePointFhir) {

    // spotless:off
    private static final String YAML =
            """
            server: { address: 127.0.0.1, port: %d }
            isoline:
              data: "%s"
              mllp: { host: 127.0.0.1, port: %d }
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
            """;
    // spotless:on

    String yaml() {
        return YAML.formatted(
                http,
                folder.path("gateway/data"),
                mllp,
                folder.path("inbox"),
                ternStreet,
                harrowBayMllp,
                harrowBayFhir,
                sablePointMllp,
                sablePointFhir,
                folder.path("archive"));
    }
}
