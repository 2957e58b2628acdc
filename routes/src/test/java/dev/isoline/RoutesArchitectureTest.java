package dev.isoline;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackages;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.properties.HasName;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.core.importer.Location;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import org.apache.camel.builder.RouteBuilder;

/** Who may know whom in routes (docs/ARCHITECTURE.md). */
@AnalyzeClasses(
        packages = "dev.isoline",
        importOptions = {DoNotIncludeTests.class, RoutesArchitectureTest.ThisModule.class})
class RoutesArchitectureTest {

    /** Leaves out the mappers and the DICOM toolkit, whose rules stand in their own modules. */
    static final class ThisModule implements ImportOption {

        @Override
        public boolean includes(Location location) {
            return location.contains("/routes/");
        }
    }

    @ArchTest
    static final ArchRule NO_CYCLES =
            slices().matching("dev.isoline.(*)..")
                    .should()
                    .beFreeOfCycles()
                    .because("a package can be read with only those below it in mind");

    @ArchTest
    static final ArchRule ROUTES_STAND_IN_FLOW =
            classes()
                    .that()
                    .areAssignableTo(RouteBuilder.class)
                    .should()
                    .resideInAPackage("dev.isoline.flow")
                    .andShould()
                    .haveSimpleNameEndingWith("Route")
                    .because("one class per flow, found where the flow pages say");

    @ArchTest
    static final ArchRule ERRORS_OF_ROUTES_STAND_IN_ONE_PLACE =
            noClasses()
                    .that()
                    .haveSimpleNameNotEndingWith("ErrorHandling")
                    .should()
                    .callMethodWhere(
                            JavaCall.Predicates.target(HasName.Predicates.name("onException")))
                    .because("each edge has one class that turns faults into its own words");

    @ArchTest
    static final ArchRule SQL_STANDS_IN_THE_LEDGER =
            noClasses()
                    .that()
                    .resideOutsideOfPackage("dev.isoline.ledger..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage("java.sql..", "javax.sql..", "org.springframework.jdbc..")
                    .because("what is promised about commits is kept by the ledger alone");

    @ArchTest
    static final ArchRule CAMEL_AND_NETTY_STAND_AT_THE_EDGE =
            noClasses()
                    .that()
                    .resideOutsideOfPackages(
                            "dev.isoline.flow..",
                            "dev.isoline.mllp..",
                            "dev.isoline.dimse..",
                            "dev.isoline.app..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage("org.apache.camel..", "io.netty..")
                    .because("what a message does is the same however it was carried");

    @ArchTest
    static final ArchRule ONE_DICOM_TOOLKIT =
            noClasses()
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(
                            "org.dcm4che3..",
                            "dev.isoline.dicom.upper..",
                            "dev.isoline.dicom.dimse..")
                    .because("another toolkit stands behind the interface of dev.isoline.dicom");

    @ArchTest
    static final ArchRule THE_DIMSE_COMPONENT_KNOWS_NO_ORDER =
            noClasses()
                    .that()
                    .resideInAPackage("dev.isoline.dimse..")
                    .should()
                    .dependOnClassesThat(
                            resideInAPackage("dev.isoline..")
                                    .and(
                                            resideOutsideOfPackages(
                                                    "dev.isoline.dimse..", "dev.isoline.dicom..")))
                    .because("a Camel component over DICOM is of use beyond this gateway");

    @ArchTest
    static final ArchRule ONE_LOGGER =
            noClasses()
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage("java.util.logging..", "org.apache.logging..")
                    .because("what is logged is configured in one place");

    @ArchTest
    static final ArchRule THE_LEDGER_KNOWS_NO_EDGE =
            noClasses()
                    .that()
                    .resideInAPackage("dev.isoline.ledger..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(
                            "ca.uhn..", "org.hl7..", "org.springframework..", "jakarta.servlet..")
                    .because("it keeps rows for everyone and reads none of them");
}
