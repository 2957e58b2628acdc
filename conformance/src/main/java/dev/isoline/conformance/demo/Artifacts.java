package dev.isoline.conformance.demo;

import java.nio.file.Files;
import java.util.List;

/** What the folder must hold at the end. */
final class Artifacts {

    private static final List<String> EXPECTED =
            List.of(
                    "README.txt",
                    "expected.json",
                    "harrow-bay/01-order-in.hl7",
                    "harrow-bay/01-order-ack.hl7",
                    "harrow-bay/02-adt-in.hl7",
                    "harrow-bay/02-adt-ack.hl7",
                    "harrow-bay/03-order-again-ack.hl7",
                    "harrow-bay/HB-1001/oru.hl7",
                    "harrow-bay/HB-1001/report-bundle.json",
                    "sable-point/01-order-bundle.json",
                    "sable-point/01-order-response.json",
                    "sable-point/SP-2002/oru.hl7",
                    "sable-point/SP-2002/report-bundle.json",
                    "tern-street/order-forwarded-1.json",
                    "tern-street/order-forwarded-2.json",
                    "worklist/HB-1001-on-hold.json",
                    "worklist/HB-1001-ready.json",
                    "worklist/HB-1001-recorded.json",
                    "worklist/SP-2002-ready.json",
                    "worklist/SP-2002-recorded.json");

    private Artifacts() {}

    static void check(DemoFolder folder, Story story) {
        for (String name : EXPECTED) {
            story.expect(Files.isRegularFile(folder.path(name)), "%s is missing", name);
        }
    }
}
