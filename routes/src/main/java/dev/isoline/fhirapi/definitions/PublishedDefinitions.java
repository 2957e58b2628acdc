package dev.isoline.fhirapi.definitions;

import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import dev.isoline.fhirapi.definitions.PublishedBundle.Entry;
import dev.isoline.resources.FhirJson;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.apache.commons.lang3.StringUtils;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r4.model.MetadataResource;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.StructureDefinition;

/**
 * The definitions of the FHIR R4 publication, each read when it is first asked for. HAPI, which
 * brings them along, reads all of them at once, which takes seconds; the answers are the same.
 */
public final class PublishedDefinitions extends DefaultProfileValidationSupport {

    private static final String FHIR = "http://hl7.org/fhir/StructureDefinition/";

    private final Map<Entry, Resource> read = new ConcurrentHashMap<>();

    public PublishedDefinitions() {
        super(FhirJson.CONTEXT);
    }

    @Override
    public IBaseResource fetchStructureDefinition(String url) {
        String full = full(url);
        var definition = structure(full);
        return definition == null ? primitiveInUpperCase(full) : definition;
    }

    @Override
    public IBaseResource fetchCodeSystem(String url) {
        boolean ofHapi = url.startsWith("https://hapifhir.io/");
        return ofHapi ? super.fetchCodeSystem(url) : terminology("CodeSystem", url);
    }

    @Override
    public IBaseResource fetchValueSet(String url) {
        return terminology("ValueSet", url);
    }

    /** The definitions of all structures without their elements, read in one go. */
    List<StructureDefinition> headers() {
        String entries =
                Structures.BY_URL.values().stream()
                        .map(Entry::header)
                        .collect(Collectors.joining());
        return PublishedBundle.read(entries).stream().map(this::partOfFhir).toList();
    }

    private StructureDefinition structure(String url) {
        Entry entry = Structures.BY_URL.get(url);
        return entry == null
                ? null
                : (StructureDefinition) read.computeIfAbsent(entry, e -> partOfFhir(e.read()));
    }

    /** A type alone, or after the name of its kind of resource, is one of FHIR's own. */
    private static String full(String url) {
        int slashes = StringUtils.countMatches(url, '/');
        return slashes == 0 ? FHIR + url : slashes == 1 ? "http://hl7.org/fhir/" + url : url;
    }

    /** FHIRPath of R4 search parameters says {@code String} where the type is {@code string}. */
    private StructureDefinition primitiveInUpperCase(String url) {
        String type = url.startsWith(FHIR) ? url.substring(FHIR.length()) : "";
        if (type.isEmpty() || !Character.isUpperCase(type.charAt(0))) {
            return null;
        }
        var definition =
                structure(FHIR + Character.toLowerCase(type.charAt(0)) + type.substring(1));
        return definition == null ? null : partOfFhir(definition.copy().setType(type));
    }

    /** What the validator looks at to tell FHIR's own definitions from those of guides. */
    private StructureDefinition partOfFhir(Resource definition) {
        definition.setUserData("package", "hl7.fhir.r4");
        definition.setUserData(SOURCE_PACKAGE_ID, "hl7.fhir.r4.core");
        return (StructureDefinition) definition;
    }

    /** FHIR's own terminology is found whatever its version, that of others by its version. */
    private IBaseResource terminology(String type, String canonical) {
        String[] url = canonical.split("\\|", 2);
        Entry entry = Terminology.BY_TYPE_AND_URL.get(type + " " + url[0]);
        if (entry == null) {
            return null;
        }
        var resource = (MetadataResource) read.computeIfAbsent(entry, Entry::read);
        boolean anyVersion =
                url.length == 1
                        || url[1].isBlank()
                        || url[0].startsWith("http://hl7.org")
                        || url[0].startsWith("http://terminology.hl7.org");
        return anyVersion || url[1].equals(resource.getVersion()) ? resource : null;
    }

    /** Found at the first question. */
    private static final class Structures {

        static final Map<String, Entry> BY_URL = new HashMap<>();

        static {
            List.of(
                            "profile/profiles-resources.xml",
                            "profile/profiles-types.xml",
                            "profile/profiles-others.xml",
                            "extension/extension-definitions.xml")
                    .forEach(Structures::add);
        }

        private static void add(String file) {
            for (Entry entry : published(file)) {
                if (entry.type.equals("StructureDefinition")) {
                    BY_URL.put(entry.url, entry);
                }
            }
        }
    }

    /** Found at the first question. */
    private static final class Terminology {

        static final Map<String, Entry> BY_TYPE_AND_URL = new HashMap<>();

        static {
            List.of(
                            "valueset/valuesets.xml",
                            "valueset/v2-tables.xml",
                            "valueset/v3-codesystems.xml")
                    .forEach(Terminology::add);
        }

        private static void add(String file) {
            published(file).forEach(e -> BY_TYPE_AND_URL.put(e.type + " " + e.url, e));
        }
    }

    private static List<Entry> published(String file) {
        return new PublishedBundle("/org/hl7/fhir/r4/model/" + file).entries();
    }
}
