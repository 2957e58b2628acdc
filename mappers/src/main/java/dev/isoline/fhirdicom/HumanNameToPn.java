package dev.isoline.fhirdicom;

import java.util.List;
import java.util.Objects;
import org.hl7.fhir.r4.model.HumanName;
import org.hl7.fhir.r4.model.HumanName.NameUse;
import org.hl7.fhir.r4.model.PrimitiveType;
import org.hl7.fhir.r4.model.StringType;

/** HumanName (FHIR R4) to VR PN. */
final class HumanNameToPn {

    private HumanNameToPn() {}

    /** The official name, else the first one. */
    static String map(List<HumanName> names, String location) {
        return names.stream()
                .filter(name -> name.getUse() == NameUse.OFFICIAL)
                .findFirst()
                .or(() -> names.stream().findFirst())
                .map(name -> pn(name, location))
                .orElse("");
    }

    private static String pn(HumanName name, String location) {
        return PersonNameText.of(
                Objects.requireNonNullElse(name.getFamily(), ""),
                texts(name.getGiven()),
                texts(name.getPrefix()),
                texts(name.getSuffix()),
                location);
    }

    private static List<String> texts(List<StringType> parts) {
        return parts.stream().map(PrimitiveType::getValue).filter(Objects::nonNull).toList();
    }
}
