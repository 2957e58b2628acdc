package dev.isoline.synth;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

@AnalyzeClasses(
        packages = "dev.isoline.synth",
        importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

    @ArchTest
    static final ArchRule the_synthesiser_knows_only_the_jdk =
            classes()
                    .should()
                    .onlyDependOnClassesThat()
                    .resideInAnyPackage("java..", "dev.isoline.synth..")
                    .because("the truth must not depend on a library that could share a mistake");
}
