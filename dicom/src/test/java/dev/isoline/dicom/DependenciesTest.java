package dev.isoline.dicom;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

@AnalyzeClasses(
        packages = "dev.isoline.dicom",
        importOptions = ImportOption.DoNotIncludeTests.class)
class DependenciesTest {

    @ArchTest
    static final ArchRule KNOWS_ONLY_THE_JDK =
            classes()
                    .should()
                    .onlyDependOnClassesThat()
                    .resideInAnyPackage(
                            "java..",
                            "javax.net.ssl..",
                            "javax.security.auth.x500..",
                            "dev.isoline.dicom..")
                    .because("the toolkit has to run, and be replaced, without anything around it");

    @ArchTest
    static final ArchRule NO_CYCLES =
            slices().matching("dev.isoline.(*)..")
                    .should()
                    .beFreeOfCycles()
                    .because("a part can only be replaced where nothing points back into it");
}
