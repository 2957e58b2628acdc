package dev.isoline.hl7v2fhir;

import static dev.isoline.hl7v2fhir.Fields.each;
import static dev.isoline.hl7v2fhir.Fields.on;

import ca.uhn.hl7v2.model.v251.segment.IN1;
import ca.uhn.hl7v2.model.v251.segment.IN2;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.datatype.StToString;
import dev.isoline.hl7v2fhir.datatype.TsToDate;
import dev.isoline.hl7v2fhir.datatype.XadToAddress;
import dev.isoline.hl7v2fhir.datatype.XpnToHumanName;
import dev.isoline.hl7v2fhir.datatype.XtnToContactPoint;
import dev.isoline.hl7v2fhir.table.Table0001;
import dev.isoline.order.StableId;
import java.util.Optional;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.RelatedPerson;

/**
 * IN1-16, -18, -19, -43 (HL7 v2.5.1 ch. 6.5.6) and IN2-63 to the subscriber of a Coverage. The
 * published rows name only IN1-16; the rest is our own, docs/mappings/in1-to-coverage.md.
 */
final class In1ToRelatedPerson {

    private In1ToRelatedPerson() {}

    /** Null when the message tells nothing about the insured. */
    static RelatedPerson map(IN1 in1, IN2 in2, Reference patient, Reading in) {
        var person = new RelatedPerson();
        // spotless:off
        each(in1.getIn116_NameOfInsured(), f -> XpnToHumanName.map(f, in.at("IN1-16")), person::addName);
        on(in1.getIn118_InsuredSDateOfBirth(), f -> TsToDate.map(f, in.at("IN1-18")), person::setBirthDateElement);
        each(in1.getIn119_InsuredSAddress(), f -> XadToAddress.map(f, in.at("IN1-19")), person::addAddress);
        on(in1.getIn143_InsuredSAdministrativeSex(), f -> Optional.ofNullable(StToString.map(f)).flatMap(Table0001::toFhir), person::setGender);
        // spotless:on
        if (in2 != null) {
            each(
                    in2.getIn263_InsuredSPhoneNumberHome(),
                    f -> XtnToContactPoint.map(f, in.at("IN2-63")),
                    person::addTelecom);
        }
        if (person.isEmpty()) {
            return null;
        }
        person.setId(
                StableId.of(
                        "RelatedPerson",
                        patient.getReference(),
                        "IN1",
                        person.getNameFirstRep().getNameAsSingleString(),
                        "" + person.getBirthDateElement().getValueAsString()));
        return person.setPatient(patient);
    }
}
