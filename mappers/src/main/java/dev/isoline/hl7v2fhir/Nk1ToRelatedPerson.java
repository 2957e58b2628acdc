package dev.isoline.hl7v2fhir;

import static dev.isoline.hl7v2fhir.Fields.each;
import static dev.isoline.hl7v2fhir.Fields.on;

import ca.uhn.hl7v2.model.v251.datatype.CE;
import ca.uhn.hl7v2.model.v251.segment.NK1;
import dev.isoline.hl7v2fhir.datatype.CeToCodeableConcept;
import dev.isoline.hl7v2fhir.datatype.CxToIdentifier;
import dev.isoline.hl7v2fhir.datatype.DrToPeriod;
import dev.isoline.hl7v2fhir.datatype.LanguageToCodeableConcept;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.datatype.StToString;
import dev.isoline.hl7v2fhir.datatype.TsToDate;
import dev.isoline.hl7v2fhir.datatype.XadToAddress;
import dev.isoline.hl7v2fhir.datatype.XpnToHumanName;
import dev.isoline.hl7v2fhir.datatype.XtnToContactPoint;
import dev.isoline.hl7v2fhir.table.Table0001;
import dev.isoline.hl7v2fhir.table.Table0063;
import dev.isoline.hl7v2fhir.table.Table0131;
import dev.isoline.order.StableId;
import java.util.Optional;
import java.util.function.Function;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.ContactPoint.ContactPointUse;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.RelatedPerson;

/**
 * NK1 (HL7 v2.5.1 ch. 3.4.5) to RelatedPerson. Rows: NK1[RelatedPerson]. Left out, and why:
 * docs/mappings/nk1-to-relatedperson.md.
 */
public final class Nk1ToRelatedPerson {

    private Nk1ToRelatedPerson() {}

    /**
     * @param position of this NK1 among those of the message, from 0
     */
    public static RelatedPerson map(NK1 nk1, int position, Reference patient, Reading in) {
        var person = new RelatedPerson().setPatient(patient);
        person.setId(StableId.of("RelatedPerson", patient.getReference(), "NK1", "" + position));
        // spotless:off
        each(nk1.getNk12_Name(), f -> XpnToHumanName.map(f, in.at("NK1-2")), person::addName);
        on(nk1.getNk13_Relationship(), f -> coded(f, Table0063::toFhir), person::addRelationship);
        each(nk1.getNk14_Address(), f -> XadToAddress.map(f, in.at("NK1-4")), person::addAddress);
        each(nk1.getNk15_PhoneNumber(), f -> XtnToContactPoint.map(f, in.at("NK1-5")), person::addTelecom);
        each(nk1.getNk16_BusinessPhoneNumber(), f -> XtnToContactPoint.map(f, in.at("NK1-6")),
                f -> person.addTelecom(f.setUse(ContactPointUse.WORK)));
        on(nk1.getNk17_ContactRole(), f -> coded(f, Table0131::toFhir), person::addRelationship);
        person.setPeriod(DrToPeriod.map(nk1.getNk18_StartDate(), nk1.getNk19_EndDate(), in.at("NK1-8")));
        on(nk1.getNk115_AdministrativeSex(), f -> Optional.ofNullable(StToString.map(f)).flatMap(Table0001::toFhir), person::setGender);
        on(nk1.getNk116_DateTimeOfBirth(), f -> TsToDate.map(f, in.at("NK1-16")), person::setBirthDateElement);
        on(nk1.getNk120_PrimaryLanguage(), f -> LanguageToCodeableConcept.map(f, in.at("NK1-20")), f -> person.addCommunication().setLanguage(f));
        each(nk1.getNk130_ContactPersonSName(), f -> XpnToHumanName.map(f, in.at("NK1-30")), person::addName);
        each(nk1.getNk131_ContactPersonSTelephoneNumber(), f -> XtnToContactPoint.map(f, in.at("NK1-31")), person::addTelecom);
        each(nk1.getNk132_ContactPersonSAddress(), f -> XadToAddress.map(f, in.at("NK1-32")), person::addAddress);
        each(nk1.getNk133_NextOfKinAssociatedPartySIdentifiers(), f -> CxToIdentifier.map(f, in.at("NK1-33")), person::addIdentifier);
        // spotless:on
        return person;
    }

    /** The code of the published map first, the sender's own beside it. */
    static Optional<CodeableConcept> coded(CE ce, Function<String, Optional<Coding>> table) {
        Optional<CodeableConcept> sent = CeToCodeableConcept.map(ce);
        sent.filter(CodeableConcept::hasCoding)
                .ifPresent(
                        concept ->
                                table.apply(concept.getCodingFirstRep().getCode())
                                        .ifPresent(c -> concept.getCoding().add(0, c)));
        return sent;
    }
}
