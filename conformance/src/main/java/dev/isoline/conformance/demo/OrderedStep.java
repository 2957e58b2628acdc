package dev.isoline.conformance.demo;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.isoline.conformance.validator.Er7;
import dev.isoline.dicom.Tag;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * What an order, as its clinic wrote it, says of the worklist's attributes (PS3.4 table K.6-1).
 *
 * @param placer placer order number
 * @param station AE title of the clinic's recorder station
 * @param values by tag
 */
record OrderedStep(String placer, String station, Map<Integer, String> values) {

    /** From OMG^O19; fields as IHE RAD TF-2 appendix B pairs them (from memory). */
    static OrderedStep harrowBay() throws IOException {
        Er7 order = Er7.of(Templates.hl7v2("harrow-bay-order.hl7"));
        var values = new LinkedHashMap<Integer, String>();
        // spotless:off
        values.put(Tag.PatientID,                              part(order.field("PID", 3), 1));
        values.put(Tag.PatientName,                            parts(order.field("PID", 5), 1, 2));
        values.put(Tag.PatientBirthDate,                       order.field("PID", 7));
        values.put(Tag.PatientSex,                             order.field("PID", 8));
        values.put(Tag.PlacerOrderNumberImagingServiceRequest, part(order.field("ORC", 2), 1));
        values.put(Tag.RequestingPhysician,                    parts(order.field("ORC", 12), 2, 3));
        values.put(Tag.ScheduledProcedureStepStartDate,        order.field("TQ1", 7).substring(0, 8));
        values.put(Tag.ScheduledProcedureStepStartTime,        order.field("TQ1", 7).substring(8, 14));
        values.put(Tag.RequestedProcedureDescription,          part(order.field("OBR", 4), 2));
        values.put(Tag.ReasonForTheRequestedProcedure,         part(order.field("OBR", 31), 2));
        // spotless:on
        return of("HB_ECG_1", values);
    }

    /** From the FHIR transaction; a step nobody has set a time for begins when it was ordered. */
    static OrderedStep sablePoint() throws IOException {
        JsonNode bundle = new ObjectMapper().readTree(Templates.text("sable-point-order.json"));
        JsonNode patient = resource(bundle, "Patient");
        JsonNode order = resource(bundle, "ServiceRequest");
        JsonNode requester = resource(bundle, "Practitioner");
        String ordered = text(order, "/authoredOn").replaceAll("[^0-9]", "");
        var values = new LinkedHashMap<Integer, String>();
        // spotless:off
        values.put(Tag.PatientID,                              text(patient, "/identifier/0/value"));
        values.put(Tag.PatientName,                            name(patient));
        values.put(Tag.PatientBirthDate,                       text(patient, "/birthDate").replace("-", ""));
        values.put(Tag.PatientSex,                             text(patient, "/gender").substring(0, 1).toUpperCase(Locale.ROOT));
        values.put(Tag.PlacerOrderNumberImagingServiceRequest, text(order, "/identifier/0/value"));
        values.put(Tag.RequestingPhysician,                    name(requester));
        values.put(Tag.ScheduledProcedureStepStartDate,        ordered.substring(0, 8));
        values.put(Tag.ScheduledProcedureStepStartTime,        ordered.substring(8, 14));
        values.put(Tag.RequestedProcedureDescription,          text(order, "/code/coding/0/display"));
        values.put(Tag.ReasonForTheRequestedProcedure,         text(order, "/reasonCode/0/text"));
        // spotless:on
        return of("SP_ECG_1", values);
    }

    private static OrderedStep of(String station, Map<Integer, String> values) {
        values.put(Tag.Modality, "ECG");
        values.put(Tag.ScheduledStationAETitle, station);
        return new OrderedStep(
                values.get(Tag.PlacerOrderNumberImagingServiceRequest), station, values);
    }

    private static String part(String field, int number) {
        return parts(field, number, number);
    }

    /** Components of XPN and XCN stand in the order of PN: family, given. */
    private static String parts(String field, int first, int last) {
        String[] all = field.split("\\^", -1);
        return IntStream.rangeClosed(first, last)
                .mapToObj(number -> number <= all.length ? all[number - 1] : "")
                .collect(Collectors.joining("^"));
    }

    private static JsonNode resource(JsonNode bundle, String type) {
        for (JsonNode entry : bundle.get("entry")) {
            if (text(entry, "/resource/resourceType").equals(type)) {
                return entry.get("resource");
            }
        }
        throw new IllegalArgumentException("The order has no " + type + ".");
    }

    private static String name(JsonNode person) {
        return String.join("^", text(person, "/name/0/family"), text(person, "/name/0/given/0"));
    }

    private static String text(JsonNode node, String pointer) {
        return node.at(pointer).asText();
    }
}
