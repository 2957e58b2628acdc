package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.v251.datatype.XTN;
import dev.isoline.hl7v2fhir.table.Table0201;
import dev.isoline.hl7v2fhir.table.Table0202;
import java.util.Optional;
import org.hl7.fhir.r4.model.ContactPoint;
import org.hl7.fhir.r4.model.ContactPoint.ContactPointSystem;
import org.hl7.fhir.r4.model.ContactPoint.ContactPointUse;
import org.hl7.fhir.r4.model.StringType;

/**
 * XTN (HL7 v2.5.1 ch. 2.A.89) to ContactPoint. Rows: XTN[ContactPoint];
 * docs/mappings/xtn-to-contactpoint.md.
 */
public final class XtnToContactPoint {

    private static final String EXTENSION = "http://hl7.org/fhir/StructureDefinition/contactpoint-";

    private XtnToContactPoint() {}

    /** Empty when there is neither a number nor an address. */
    public static Optional<ContactPoint> map(XTN xtn, Reading in) {
        String value = value(xtn);
        if (value == null) {
            return Optional.empty();
        }
        var telecom = new ContactPoint().setValue(value);
        system(xtn, telecom, in);
        use(StToString.map(xtn.getXtn2_TelecommunicationUseCode()), telecom, in);
        part(telecom, "country", StToString.map(xtn.getXtn5_CountryCode()));
        part(telecom, "area", StToString.map(xtn.getXtn6_AreaCityCode()));
        part(telecom, "local", StToString.map(xtn.getXtn7_LocalNumber()));
        part(telecom, "extension", StToString.map(xtn.getXtn8_Extension()));
        return Optional.of(telecom);
    }

    private static String value(XTN xtn) {
        if (isAddress(xtn)) {
            return StToString.map(xtn.getXtn4_EmailAddress());
        }
        String unformatted = StToString.map(xtn.getXtn12_UnformattedTelephoneNumber());
        if (unformatted != null) {
            return unformatted;
        }
        return xtn.getXtn7_LocalNumber().getValue() == null
                ? StToString.map(xtn.getXtn1_TelephoneNumber())
                : formatted(xtn);
    }

    private static boolean isAddress(XTN xtn) {
        String type = StToString.map(xtn.getXtn3_TelecommunicationEquipmentType());
        return type == null
                ? StToString.map(xtn.getXtn4_EmailAddress()) != null
                : type.equals("Internet") || type.equals("X.400");
    }

    private static String formatted(XTN xtn) {
        String country = StToString.map(xtn.getXtn5_CountryCode());
        String area = StToString.map(xtn.getXtn6_AreaCityCode());
        String extension = StToString.map(xtn.getXtn8_Extension());
        return (country == null ? "" : "+" + country + " ")
                + (area == null ? "" : area + " ")
                + StToString.map(xtn.getXtn7_LocalNumber())
                + (extension == null ? "" : " X" + extension);
    }

    private static void system(XTN xtn, ContactPoint telecom, Reading in) {
        String type = StToString.map(xtn.getXtn3_TelecommunicationEquipmentType());
        if (type == null) {
            telecom.setSystem(isAddress(xtn) ? ContactPointSystem.EMAIL : ContactPointSystem.PHONE);
        } else if (Table0202.isMobile(type)) {
            telecom.setSystem(ContactPointSystem.PHONE).setUse(ContactPointUse.MOBILE);
        } else {
            telecom.setSystem(Table0202.toFhir(type).orElse(ContactPointSystem.OTHER));
            if (Table0202.toFhir(type).isEmpty()) {
                in.note(3, "carried as other: not in HL7 table 0202");
            }
        }
    }

    private static void use(String code, ContactPoint telecom, Reading in) {
        if (code == null || telecom.hasUse()) {
            return;
        }
        Table0201.toFhir(code)
                .ifPresentOrElse(
                        telecom::setUse,
                        () -> in.note(2, "left out: no FHIR use for this code of table 0201"));
    }

    private static void part(ContactPoint telecom, String extension, String value) {
        if (value != null) {
            telecom.addExtension(EXTENSION + extension, new StringType(value));
        }
    }
}
