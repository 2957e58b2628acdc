package dev.isoline.resources;

import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.r4.model.Base;
import org.hl7.fhir.r4.model.Property;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;

/**
 * The references within one resource, each with its place.
 *
 * @param path FHIRPath such as {@code ServiceRequest.supportingInfo[1]}
 * @param element name of the element that holds it, such as {@code supportingInfo}
 */
public record References(String path, String element, Reference reference) {

    public static List<References> of(Resource resource, String path) {
        var found = new ArrayList<References>();
        collect(resource, path, found);
        return found;
    }

    private static void collect(Base parent, String path, List<References> found) {
        for (Property property : parent.children()) {
            List<Base> values = property.getValues();
            for (int i = 0; i < values.size(); i++) {
                String place = path + "." + property.getName().replace("[x]", "");
                String indexed = property.isList() ? place + "[" + i + "]" : place;
                if (values.get(i) instanceof Reference reference) {
                    found.add(new References(indexed, property.getName(), reference));
                }
                collect(values.get(i), indexed, found);
            }
        }
    }
}
