package dev.isoline;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.properties.HasName;
import com.tngtech.archunit.core.domain.properties.HasOwner;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.core.importer.Location;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.UUID;

/** Who may know whom in mappers (docs/ARCHITECTURE.md). */
@AnalyzeClasses(
        packages = "dev.isoline",
        importOptions = {DoNotIncludeTests.class, MappersArchitectureTest.ThisModule.class})
class MappersArchitectureTest {

    /** Leaves out the DICOM toolkit, whose rules stand in its own module. */
    static final class ThisModule implements ImportOption {

        @Override
        public boolean includes(Location location) {
            return location.contains("/mappers/");
        }
    }

    @ArchTest
    static final ArchRule MAPPERS_ARE_PURE =
            noClasses()
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(
                            "org.apache.camel..",
                            "org.springframework..",
                            "java.sql..",
                            "javax.sql..",
                            "java.nio.file..",
                            "java.net.http..",
                            "org.slf4j..",
                            "java.util.logging..",
                            "org.apache.logging..")
                    .orShould()
                    .dependOnClassesThat()
                    .haveNameMatching(
                            "java\\.io\\.(File|FileInputStream|FileOutputStream|RandomAccessFile)|java\\.net\\.(Socket|ServerSocket|URL|URLConnection)")
                    .because("a mapper is handed everything it needs: same input, same output");

    @ArchTest
    static final ArchRule NO_CLOCK =
            noClasses()
                    .should()
                    .callMethodWhere(
                            JavaCall.Predicates.target(
                                            HasName.Predicates.nameMatching(
                                                    "now|system|systemUTC|systemDefaultZone|currentTimeMillis|nanoTime"))
                                    .and(
                                            JavaCall.Predicates.target(
                                                    HasOwner.Predicates.With.owner(
                                                            JavaClass.Predicates.resideInAnyPackage(
                                                                    "java.time..", "java.lang")))))
                    .because(
                            "time is handed in, so that a message mapped again gives the same result");

    @ArchTest
    static final ArchRule NO_CHANCE =
            noClasses()
                    .should()
                    .callMethod(UUID.class, "randomUUID")
                    .orShould()
                    .dependOnClassesThat()
                    .haveNameMatching(
                            "java\\.util\\.Random|java\\.security\\.SecureRandom|java\\.util\\.concurrent\\.ThreadLocalRandom")
                    .because("identifiers are derived from what they identify");

    @ArchTest
    static final ArchRule ORDER_KNOWS_ONLY_THE_JDK =
            classes()
                    .that()
                    .resideInAPackage("dev.isoline.order..")
                    .should()
                    .onlyDependOnClassesThat()
                    .resideInAnyPackage("java..", "dev.isoline.order..")
                    .because("states and problems are spoken by every edge and belong to none");

    @ArchTest
    static final ArchRule HL7_V2_MEETS_FHIR_IN_TWO_PLACES =
            noClasses()
                    .that()
                    .resideOutsideOfPackages("dev.isoline.hl7v2fhir..", "dev.isoline.fhirhl7v2..")
                    .and()
                    .resideInAPackage("dev.isoline..")
                    .and(
                            DescribedPredicate.describe(
                                    "know HL7 v2",
                                    c ->
                                            c.getDirectDependenciesFromSelf().stream()
                                                    .anyMatch(
                                                            d ->
                                                                    d.getTargetClass()
                                                                            .getPackageName()
                                                                            .startsWith(
                                                                                    "ca.uhn.hl7v2"))))
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage("org.hl7.fhir..", "ca.uhn.fhir..")
                    .because(
                            "FHIR is the canonical model; HL7 v2 is translated at the edge and nowhere else")
                    .allowEmptyShould(true);

    @ArchTest
    static final ArchRule NO_CYCLES =
            slices().matching("dev.isoline.(**)")
                    .should()
                    .beFreeOfCycles()
                    .because("a package can be read with only those below it in mind");
}
