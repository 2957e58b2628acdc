package dev.isoline.dicom.spi;

import static com.tngtech.archunit.library.Architectures.layeredArchitecture;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

@AnalyzeClasses(
        packages = "dev.isoline.dicom",
        importOptions = ImportOption.DoNotIncludeTests.class)
class SeamTest {

    @ArchTest
    static final ArchRule NOTHING_OF_THE_ENGINE_SHOWS =
            layeredArchitecture()
                    .consideringOnlyDependenciesInLayers()
                    .optionalLayer("services")
                    .definedBy("dev.isoline.dicom.dimse")
                    .optionalLayer("upper layer")
                    .definedBy("dev.isoline.dicom.upper")
                    .layer("seam")
                    .definedBy("dev.isoline.dicom.spi")
                    .layer("data sets")
                    .definedBy("dev.isoline.dicom")
                    .whereLayer("services")
                    .mayNotBeAccessedByAnyLayer()
                    .whereLayer("upper layer")
                    .mayOnlyBeAccessedByLayers("services")
                    .whereLayer("seam")
                    .mayOnlyBeAccessedByLayers("services", "upper layer")
                    .because("another engine has to fit behind the same seam");
}
