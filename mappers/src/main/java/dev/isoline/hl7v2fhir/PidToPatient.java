package dev.isoline.hl7v2fhir;

import static dev.isoline.hl7v2fhir.Fields.each;
import static dev.isoline.hl7v2fhir.Fields.on;

import ca.uhn.hl7v2.model.v251.datatype.ID;
import ca.uhn.hl7v2.model.v251.datatype.XTN;
import ca.uhn.hl7v2.model.v251.segment.PID;
import dev.isoline.hl7v2fhir.datatype.CeToCodeableConcept;
import dev.isoline.hl7v2fhir.datatype.DlnToIdentifier;
import dev.isoline.hl7v2fhir.datatype.LanguageToCodeableConcept;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.datatype.StToString;
import dev.isoline.hl7v2fhir.datatype.TsToDate;
import dev.isoline.hl7v2fhir.datatype.TsToDateTime;
import dev.isoline.hl7v2fhir.datatype.XadToAddress;
import dev.isoline.hl7v2fhir.datatype.XpnToHumanName;
import dev.isoline.hl7v2fhir.datatype.XtnToContactPoint;
import dev.isoline.hl7v2fhir.table.Table0001;
import dev.isoline.hl7v2fhir.table.Table0002;
import dev.isoline.hl7v2fhir.table.Table0136;
import dev.isoline.hl7v2fhir.table.Table0203;
import dev.isoline.order.StableId;
import java.util.Optional;
import org.hl7.fhir.r4.model.Address;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.ContactPoint;
import org.hl7.fhir.r4.model.ContactPoint.ContactPointUse;
import org.hl7.fhir.r4.model.Extension;
import org.hl7.fhir.r4.model.HumanName.NameUse;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.IntegerType;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.StringType;

/**
 * PID (HL7 v2.5.1 ch. 3.4.2) to Patient. Rows: PID[Patient]. Left out, and why:
 * docs/mappings/pid-to-patient.md.
 */
public final class PidToPatient {

    private static final String EXTENSION = "http://hl7.org/fhir/StructureDefinition/patient-";

    private PidToPatient() {}

    /** Refuses a PID without an identifier whose authority is known; all else becomes a note. */
    public static Patient map(PID pid, Reading in) {
        var patient = new Patient();
        PatientIdentifiers.of(pid, in).forEach(patient::addIdentifier); // PID-2, PID-3, PID-4
        Identifier record = patient.getIdentifierFirstRep();
        patient.setId(StableId.of("Patient", record.getSystem(), record.getValue()));
        // spotless:off
        each(pid.getPid5_PatientName(), f -> XpnToHumanName.map(f, in.at("PID-5")), patient::addName);
        each(pid.getPid6_MotherSMaidenName(), f -> XpnToHumanName.map(f, in.at("PID-6")),
                f -> patient.addExtension(EXTENSION + "mothersMaidenName", new StringType(f.getNameAsSingleString())));
        birth(pid, patient, in);
        sex(pid, patient, in);
        each(pid.getPid9_PatientAlias(), f -> XpnToHumanName.map(f, in.at("PID-9")), patient::addName);
        officialFirst(patient);
        each(pid.getPid11_PatientAddress(), f -> XadToAddress.map(f, in.at("PID-11")), patient::addAddress);
        county(pid, patient);
        each(pid.getPid13_PhoneNumberHome(), f -> telecom(f, ContactPointUse.HOME, in.at("PID-13")), patient::addTelecom);
        each(pid.getPid14_PhoneNumberBusiness(), f -> telecom(f, ContactPointUse.WORK, in.at("PID-14")), patient::addTelecom);
        on(pid.getPid15_PrimaryLanguage(), f -> LanguageToCodeableConcept.map(f, in.at("PID-15")), f -> patient.addCommunication().setLanguage(f));
        on(pid.getPid16_MaritalStatus(), CeToCodeableConcept::map, f -> patient.setMaritalStatus(marital(f)));
        on(pid.getPid17_Religion(), CeToCodeableConcept::map, f -> patient.addExtension(EXTENSION + "religion", f));
        on(pid.getPid19_SSNNumberPatient(), f -> socialSecurity(StToString.map(f), in), patient::addIdentifier);
        on(pid.getPid20_DriverSLicenseNumberPatient(), f -> DlnToIdentifier.map(f, in.at("PID-20")), patient::addIdentifier);
        on(pid.getPid23_BirthPlace(), f -> Optional.ofNullable(StToString.map(f)),
                f -> patient.addExtension("http://hl7.org/fhir/StructureDefinition/patient-birthPlace", new Address().setText(f)));
        multipleBirth(pid, patient, in);
        each(pid.getPid26_Citizenship(), CeToCodeableConcept::map, f -> coded(patient, "citizenship", f));
        on(pid.getPid28_Nationality(), CeToCodeableConcept::map, f -> coded(patient, "nationality", f));
        death(pid, patient, in);
        // spotless:on
        return patient;
    }

    private static void birth(PID pid, Patient patient, Reading in) {
        on(
                pid.getPid7_DateTimeOfBirth(),
                f -> TsToDate.map(f, in.at("PID-7")),
                patient::setBirthDateElement);
        String text = StToString.first(pid.getPid7_DateTimeOfBirth());
        if (text != null && text.length() > 8 && patient.hasBirthDate()) {
            TsToDateTime.map(pid.getPid7_DateTimeOfBirth(), in)
                    .ifPresent(
                            t ->
                                    patient.getBirthDateElement()
                                            .addExtension(EXTENSION + "birthTime", t));
        }
    }

    private static void sex(PID pid, Patient patient, Reading in) {
        String code = StToString.map(pid.getPid8_AdministrativeSex());
        if (code != null) {
            Table0001.toFhir(code)
                    .ifPresentOrElse(
                            patient::setGender,
                            () -> in.at("PID-8").note("left out: not in HL7 table 0001"));
        }
    }

    /** A name of type L or R is the one to use, wherever the sender put it. */
    private static void officialFirst(Patient patient) {
        patient.getName().stream()
                .filter(n -> n.getUse() == NameUse.OFFICIAL)
                .findFirst()
                .filter(n -> n != patient.getNameFirstRep())
                .ifPresent(
                        official -> {
                            patient.getName().remove(official);
                            patient.getName().add(0, official);
                        });
    }

    private static void county(PID pid, Patient patient) {
        String county = StToString.map(pid.getPid12_CountyCode());
        if (county == null) {
            return;
        }
        boolean one = patient.getAddress().size() == 1;
        if (one && !patient.getAddressFirstRep().hasDistrict()) {
            patient.getAddressFirstRep().setDistrict(county);
        } else if (!one || !county.equals(patient.getAddressFirstRep().getDistrict())) {
            patient.addAddress().setDistrict(county);
        }
    }

    private static Optional<ContactPoint> telecom(XTN xtn, ContactPointUse use, Reading in) {
        Optional<ContactPoint> telecom = XtnToContactPoint.map(xtn, in);
        telecom.filter(
                        t ->
                                !t.hasUse()
                                        && xtn.getXtn2_TelecommunicationUseCode().getValue()
                                                == null)
                .ifPresent(t -> t.setUse(use));
        return telecom;
    }

    /** The sender's own code stays beside the one FHIR asks for. */
    private static CodeableConcept marital(CodeableConcept sent) {
        Table0002.toFhir(sent.getCodingFirstRep().getCode())
                .ifPresent(c -> sent.getCoding().add(0, c));
        return sent;
    }

    /**
     * Nine digits are a number of the United States; anything else a number of the sender's
     * country.
     */
    private static Optional<Identifier> socialSecurity(String number, Reading in) {
        if (number == null) {
            return Optional.empty();
        }
        boolean us = number.matches("\\d{3}-?\\d{2}-?\\d{4}");
        return Optional.of(
                new Identifier()
                        .setType(Table0203.toFhir(us ? "SS" : "SB"))
                        .setSystem(
                                us
                                        ? "http://hl7.org/fhir/sid/us-ssn"
                                        : in.systems().ofSender("social-security"))
                        .setValue(number));
    }

    private static void multipleBirth(PID pid, Patient patient, Reading in) {
        String order = StToString.map(pid.getPid25_BirthOrder());
        if (order != null && order.matches("\\d{1,3}")) {
            patient.setMultipleBirth(new IntegerType(order));
        } else if (order != null) {
            in.at("PID-25").note("left out: not a number");
        } else {
            yesNo(pid.getPid24_MultipleBirthIndicator(), "PID-24", in)
                    .ifPresent(patient::setMultipleBirth);
        }
    }

    private static void death(PID pid, Patient patient, Reading in) {
        TsToDateTime.map(pid.getPid29_PatientDeathDateAndTime(), in.at("PID-29"))
                .ifPresentOrElse(
                        patient::setDeceased,
                        () ->
                                yesNo(pid.getPid30_PatientDeathIndicator(), "PID-30", in)
                                        .ifPresent(patient::setDeceased));
    }

    private static Optional<BooleanType> yesNo(ID id, String field, Reading in) {
        String code = StToString.map(id);
        if (code == null) {
            return Optional.empty();
        }
        Optional<BooleanType> value = Table0136.toFhir(code).map(BooleanType::new);
        if (value.isEmpty()) {
            in.at(field).note("left out: not in HL7 table 0136");
        }
        return value;
    }

    private static void coded(Patient patient, String extension, CodeableConcept code) {
        var outer = new Extension(EXTENSION + extension);
        outer.addExtension("code", code);
        patient.addExtension(outer);
    }
}
