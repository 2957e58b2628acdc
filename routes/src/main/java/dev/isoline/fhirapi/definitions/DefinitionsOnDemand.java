package dev.isoline.fhirapi.definitions;

import ca.uhn.fhir.context.PerformanceOptionsEnum;
import ca.uhn.fhir.context.support.IValidationSupport;
import ca.uhn.hapi.converters.canonical.VersionCanonicalizer;
import dev.isoline.resources.FhirJson;
import java.util.Date;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.hl7.fhir.common.hapi.validation.validator.WorkerContextValidationSupportAdapter;
import org.hl7.fhir.r5.model.PackageInformation;
import org.hl7.fhir.r5.model.Resource;
import org.hl7.fhir.r5.model.StructureDefinition;
import org.hl7.fhir.r5.model.StructureDefinition.StructureDefinitionKind;

/** Gives the validator the list of all structures without reading their elements. */
public final class DefinitionsOnDemand extends WorkerContextValidationSupportAdapter {

    static {
        // asked for nothing but the names of classes; to look into all of them takes a second
        FHIR_CONTEXT_R5.setPerformanceOptions(PerformanceOptionsEnum.DEFERRED_MODEL_SCANNING);
    }

    private final PublishedDefinitions published;
    private final VersionCanonicalizer canonicalizer = new VersionCanonicalizer(FhirJson.CONTEXT);
    private volatile List<StructureDefinition> structures;
    private volatile Set<String> primitives;

    /**
     * @param chain what questions about one definition go to, {@code published} among it
     */
    public DefinitionsOnDemand(IValidationSupport chain, PublishedDefinitions published) {
        super(chain);
        this.published = published;
    }

    @Override
    @SuppressWarnings("unchecked")
    public <T extends Resource> List<T> fetchResourcesByType(Class<T> type) {
        return type.equals(StructureDefinition.class)
                ? (List<T>) structures()
                : super.fetchResourcesByType(type);
    }

    @Override
    public List<StructureDefinition> fetchTypeDefinitions(String type) {
        return structures().stream().filter(s -> type.equals(s.getType())).toList();
    }

    @Override
    public boolean isPrimitiveType(String type) {
        if (primitives == null) {
            primitives =
                    structures().stream()
                            .filter(s -> s.getKind() == StructureDefinitionKind.PRIMITIVETYPE)
                            .map(StructureDefinition::getName)
                            .collect(Collectors.toUnmodifiableSet());
        }
        return type != null && primitives.contains(type);
    }

    private synchronized List<StructureDefinition> structures() {
        if (structures == null) {
            structures =
                    published.headers().stream().<StructureDefinition>map(this::unread).toList();
        }
        return structures;
    }

    private UnreadStructure unread(org.hl7.fhir.r4.model.StructureDefinition header) {
        var canonical = canonicalizer.structureDefinitionToCanonical(header);
        var source = header.getUserString(PublishedDefinitions.SOURCE_PACKAGE_ID);
        canonical.setSourcePackage(new PackageInformation(source, null, null, new Date(0)));
        return new UnreadStructure(
                canonical, () -> fetchResource(StructureDefinition.class, header.getUrl()));
    }
}
