package dev.isoline.hl7v2fhir;

import static dev.isoline.hl7v2fhir.Fields.each;
import static dev.isoline.hl7v2fhir.Fields.on;

import ca.uhn.hl7v2.model.v251.segment.GT1;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.datatype.StToString;
import dev.isoline.hl7v2fhir.datatype.TsToDate;
import dev.isoline.hl7v2fhir.datatype.XadToAddress;
import dev.isoline.hl7v2fhir.datatype.XpnToHumanName;
import dev.isoline.hl7v2fhir.datatype.XtnToContactPoint;
import dev.isoline.hl7v2fhir.table.Table0001;
import dev.isoline.hl7v2fhir.table.Table0063;
import dev.isoline.order.StableId;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.ContactPoint.ContactPointUse;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.RelatedPerson;

/**
 * GT1 (HL7 v2.5.1 ch. 6.5.5) to RelatedPerson. The published guide has no rows for GT1; these are
 * our own, docs/mappings/gt1-to-relatedperson.md.
 */
public final class Gt1ToRelatedPerson {

    private static final Coding GUARANTOR =
            new Coding("http://terminology.hl7.org/CodeSystem/v3-RoleClass", "GUAR", "guarantor");

    private Gt1ToRelatedPerson() {}

    /**
     * @param position of this GT1 among those of the message, from 0
     */
    public static RelatedPerson map(GT1 gt1, int position, Reference patient, Reading in) {
        var person = new RelatedPerson().setPatient(patient);
        person.setId(StableId.of("RelatedPerson", patient.getReference(), "GT1", "" + position));
        person.addRelationship(new CodeableConcept(GUARANTOR.copy()));
        // spotless:off
        each(gt1.getGt13_GuarantorName(), f -> XpnToHumanName.map(f, in.at("GT1-3")), person::addName);
        each(gt1.getGt15_GuarantorAddress(), f -> XadToAddress.map(f, in.at("GT1-5")), person::addAddress);
        each(gt1.getGt16_GuarantorPhNumHome(), f -> XtnToContactPoint.map(f, in.at("GT1-6")),
                f -> person.addTelecom(f.hasUse() ? f : f.setUse(ContactPointUse.HOME)));
        each(gt1.getGt17_GuarantorPhNumBusiness(), f -> XtnToContactPoint.map(f, in.at("GT1-7")),
                f -> person.addTelecom(f.hasUse() ? f : f.setUse(ContactPointUse.WORK)));
        on(gt1.getGt18_GuarantorDateTimeOfBirth(), f -> TsToDate.map(f, in.at("GT1-8")), person::setBirthDateElement);
        on(gt1.getGt19_GuarantorAdministrativeSex(), f -> Optional.ofNullable(StToString.map(f)).flatMap(Table0001::toFhir), person::setGender);
        on(gt1.getGt111_GuarantorRelationship(), f -> Nk1ToRelatedPerson.coded(f, Table0063::toFhir), person::addRelationship);
        // spotless:on
        return person;
    }
}
