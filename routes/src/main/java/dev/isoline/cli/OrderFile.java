package dev.isoline.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import dev.isoline.ecgdicom.OrderContext;
import dev.isoline.fhirdicom.Authorities;
import dev.isoline.fhirdicom.PersonNameText;
import dev.isoline.fhirdicom.ProcedureCode;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/**
 * An order file: FHIR R4 Bundle with one ServiceRequest, its Patient and perhaps its Practitioner.
 * Gives what {@link dev.isoline.fhirdicom.ServiceRequestToOrderContext} gives for the same
 * resources.
 */
final class OrderFile {

    private static final String TYPES = "http://terminology.hl7.org/CodeSystem/v2-0203";
    private static final String OID = "urn:oid:";
    private static final Map<String, String> SEX = Map.of("male", "M", "female", "F", "other", "O");

    private OrderFile() {}

    /**
     * @throws ContentError when the file is no such Bundle
     */
    static OrderContext read(Path file) throws IOException {
        try {
            return context(OrderJson.read(file));
        } catch (JsonProcessingException e) {
            throw fault("Bundle", "The order file is not JSON.");
        }
    }

    private static OrderContext context(OrderJson bundle) {
        List<OrderJson> resources =
                bundle.objects("entry").stream().map(entry -> entry.object("resource")).toList();
        OrderJson order = one(resources, "ServiceRequest");
        OrderJson patient = one(resources, "Patient");
        String requester =
                resources.stream()
                        .filter(resource -> resource.text("resourceType").equals("Practitioner"))
                        .filter(resource -> isRequester(order, resource))
                        .findFirst()
                        .map(practitioner -> name(practitioner, "Practitioner.name"))
                        .orElse("");
        var accession = identifier(order, "ACSN");
        return new OrderContext(
                subject(patient),
                studyUid(order),
                accession,
                identifier(order, "PLAC"),
                identifier(order, "FILL"),
                accession.value(),
                procedure(order.object("code")),
                requester);
    }

    private static OrderJson one(List<OrderJson> resources, String type) {
        var found = resources.stream().filter(r -> r.text("resourceType").equals(type)).toList();
        if (found.size() != 1) {
            throw fault(
                    "Bundle.entry",
                    "The order file has %d resources of type %s instead of one."
                            .formatted(found.size(), type));
        }
        return found.get(0);
    }

    /** The practitioner the order refers to by id; a Bundle's own reference may be a URL. */
    private static boolean isRequester(OrderJson order, OrderJson practitioner) {
        String reference = order.object("requester").text("reference");
        return reference.endsWith("Practitioner/" + practitioner.text("id"));
    }

    private static OrderContext.Subject subject(OrderJson patient) {
        String birthDate = patient.text("birthDate");
        boolean whole = birthDate.matches("\\d{4}-\\d{2}-\\d{2}");
        return new OrderContext.Subject(
                name(patient, "Patient.name"),
                identifier(patient, "MR"),
                whole ? birthDate.replace("-", "") : "",
                SEX.getOrDefault(patient.text("gender"), ""));
    }

    private static String name(OrderJson person, String location) {
        List<OrderJson> names = person.objects("name");
        return names.stream()
                .filter(name -> name.text("use").equals("official"))
                .findFirst()
                .or(() -> names.stream().findFirst())
                .map(
                        name ->
                                PersonNameText.of(
                                        name.text("family"),
                                        name.texts("given"),
                                        name.texts("prefix"),
                                        name.texts("suffix"),
                                        location))
                .orElse("");
    }

    private static OrderContext.Identifier identifier(OrderJson resource, String type) {
        return resource.objects("identifier").stream()
                .filter(identifier -> isOfType(identifier, type))
                .filter(identifier -> !identifier.text("value").isEmpty())
                .findFirst()
                .map(
                        identifier ->
                                new OrderContext.Identifier(
                                        identifier.text("value"),
                                        Authorities.of(
                                                identifier.text("system"),
                                                identifier.object("assigner").text("display"))))
                .orElse(OrderContext.Identifier.NONE);
    }

    private static boolean isOfType(OrderJson identifier, String type) {
        return identifier.object("type").objects("coding").stream()
                .anyMatch(c -> c.text("system").equals(TYPES) && c.text("code").equals(type));
    }

    private static OrderContext.Code procedure(OrderJson concept) {
        var codings =
                concept.objects("coding").stream()
                        .map(
                                c ->
                                        new ProcedureCode.Coded(
                                                c.text("system"),
                                                c.text("code"),
                                                c.text("display")))
                        .toList();
        return ProcedureCode.of(codings, concept.text("text"));
    }

    private static String studyUid(OrderJson order) {
        return order.objects("identifier").stream()
                .filter(identifier -> identifier.text("system").equals("urn:dicom:uid"))
                .map(identifier -> identifier.text("value"))
                .filter(value -> value.startsWith(OID))
                .map(value -> value.substring(OID.length()))
                .findFirst()
                .orElse("");
    }

    private static ContentError fault(String location, String text) {
        return new ContentError(Problem.error(Problem.Kind.VALUE, location, text));
    }
}
