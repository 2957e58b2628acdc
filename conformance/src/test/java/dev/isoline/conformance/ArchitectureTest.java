package dev.isoline.conformance;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

@AnalyzeClasses(
        packages = "dev.isoline.conformance",
        importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

    @ArchTest
    static final ArchRule the_judge_does_not_borrow_the_player_s_code =
            noClasses()
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(
                            "dev.isoline.app..",
                            "dev.isoline.attach..",
                            "dev.isoline.cli..",
                            "dev.isoline.delivery..",
                            "dev.isoline.ecg..",
                            "dev.isoline.ecgdicom..",
                            "dev.isoline.ecgfhir..",
                            "dev.isoline.fhir..",
                            "dev.isoline.fhirapi..",
                            "dev.isoline.fhirhl7v2..",
                            "dev.isoline.flow..",
                            "dev.isoline.hl7v2..",
                            "dev.isoline.hl7v2fhir..",
                            "dev.isoline.intake..",
                            "dev.isoline.ledger..",
                            "dev.isoline.order..",
                            "dev.isoline.recordings..")
                    .because(
                            "a gateway judged by its own mappers and routes would agree with its"
                                    + " own mistakes (docs/ARCHITECTURE.md)");

    @ArchTest
    static final ArchRule packages_are_free_of_cycles =
            slices().matching("dev.isoline.conformance.(*)..")
                    .should()
                    .beFreeOfCycles()
                    .because("a package that can be read alone can be trusted alone");
}
