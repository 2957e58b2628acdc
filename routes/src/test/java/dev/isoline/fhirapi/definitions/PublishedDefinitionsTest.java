package dev.isoline.fhirapi.definitions;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import dev.isoline.resources.FhirJson;
import java.util.List;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.WorkerContextValidationSupportAdapter;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r4.model.MetadataResource;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r5.model.StructureDefinition;
import org.junit.jupiter.api.Test;

/** What is read on demand is what HAPI reads all at once. */
class PublishedDefinitionsTest {

    private static final DefaultProfileValidationSupport HAPI =
            new DefaultProfileValidationSupport(FhirJson.CONTEXT);
    private static final PublishedDefinitions OURS = new PublishedDefinitions();

    @Test
    void every_resource_is_the_one_hapi_finds() {
        HAPI.fetchCodeSystem("any");
        HAPI.fetchStructureDefinition("any");
        List<IBaseResource> all = HAPI.fetchAllConformanceResources();

        assertThat(all).hasSizeGreaterThan(2500);
        all.stream().map(r -> ((MetadataResource) r).getUrl()).forEach(this::foundAlike);
    }

    @Test
    void versions_and_short_names_are_taken_as_hapi_takes_them() {
        var urls =
                List.of(
                        "Patient",
                        "StructureDefinition/Patient",
                        "http://hl7.org/fhir/StructureDefinition/String",
                        "http://hl7.org/fhir/StructureDefinition/Patient|4.0.1",
                        "http://hl7.org/fhir/StructureDefinition/nothing",
                        "http://hl7.org/fhir/ValueSet/name-use|4.0.1",
                        "http://hl7.org/fhir/ValueSet/name-use|9",
                        "http://terminology.hl7.org/CodeSystem/v2-0203|",
                        "urn:iso:std:iso:11073:10101|9",
                        "http://snomed.info/sct|9",
                        "https://hapifhir.io/fhir/CodeSystem/hapi-fhir-storage-response-code");
        urls.forEach(this::foundAlike);
    }

    private void foundAlike(String url) {
        same(OURS.fetchStructureDefinition(url), HAPI.fetchStructureDefinition(url), url);
        same(OURS.fetchCodeSystem(url), HAPI.fetchCodeSystem(url), url);
        same(OURS.fetchValueSet(url), HAPI.fetchValueSet(url), url);
    }

    private static void same(IBaseResource ours, IBaseResource theirs, String url) {
        boolean same =
                theirs == null ? ours == null : ((Resource) theirs).equalsDeep((Resource) ours);
        assertThat(same).as(url).isTrue();
    }

    @Test
    void the_list_of_structures_is_the_one_the_validator_would_make() {
        var theirs = new WorkerContextValidationSupportAdapter(new ValidationSupportChain(HAPI));
        var ours = new DefinitionsOnDemand(new ValidationSupportChain(OURS), OURS);
        List<StructureDefinition> expected = theirs.fetchResourcesByType(StructureDefinition.class);
        List<StructureDefinition> actual = ours.fetchResourcesByType(StructureDefinition.class);

        assertThat(actual)
                .extracting(StructureDefinition::getUrl)
                .containsExactlyElementsOf(
                        expected.stream().map(StructureDefinition::getUrl).toList());
        for (int i = 0; i < expected.size(); i++) {
            assertSame(actual.get(i), expected.get(i));
            assertThat(ours.isPrimitiveType(expected.get(i).getName()))
                    .isEqualTo(theirs.isPrimitiveType(expected.get(i).getName()));
        }
        assertThat(ours.fetchTypeDefinitions("Quantity"))
                .extracting(StructureDefinition::getUrl)
                .containsExactlyElementsOf(
                        theirs.fetchTypeDefinitions("Quantity").stream()
                                .map(StructureDefinition::getUrl)
                                .toList());
    }

    private static void assertSame(StructureDefinition actual, StructureDefinition expected) {
        assertThat(actual.getSourcePackage().getId())
                .isEqualTo(expected.getSourcePackage().getId());
        assertThat(actual.copy().equalsDeep(expected)).as(expected.getUrl()).isTrue();
    }
}
