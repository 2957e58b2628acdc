package dev.isoline.hl7v2fhir;

import static dev.isoline.hl7v2fhir.Fields.on;

import ca.uhn.hl7v2.model.v251.datatype.CX;
import ca.uhn.hl7v2.model.v251.datatype.PL;
import ca.uhn.hl7v2.model.v251.datatype.TS;
import ca.uhn.hl7v2.model.v251.datatype.XCN;
import ca.uhn.hl7v2.model.v251.segment.PV1;
import dev.isoline.hl7v2fhir.datatype.CxToIdentifier;
import dev.isoline.hl7v2fhir.datatype.DrToPeriod;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.datatype.StToString;
import dev.isoline.hl7v2fhir.table.Table0004;
import dev.isoline.hl7v2fhir.table.Table0007;
import dev.isoline.hl7v2fhir.table.Table0203;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DomainResource;
import org.hl7.fhir.r4.model.Encounter;
import org.hl7.fhir.r4.model.Encounter.EncounterLocationStatus;
import org.hl7.fhir.r4.model.Encounter.EncounterStatus;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Location;
import org.hl7.fhir.r4.model.Reference;

/**
 * PV1 (HL7 v2.5.1 ch. 3.4.3) to Encounter and its Location. Rows: PV1[Encounter]. Left out, and
 * why: docs/mappings/pv1-to-encounter.md.
 */
public final class Pv1ToEncounter {

    private static final String PARTICIPATION =
            "http://terminology.hl7.org/CodeSystem/v3-ParticipationType";

    private Pv1ToEncounter() {}

    /**
     * @param id of the encounter; its location has the id {@code <id>-location}
     * @return the encounter, then its location when PV1-3 names one
     */
    public static List<DomainResource> map(
            PV1 pv1, String id, Reference patient, Practitioners practitioners, Reading in) {
        var encounter = new Encounter().setSubject(patient);
        encounter.setId(id);
        List<DomainResource> resources = new ArrayList<>();
        resources.add(encounter);
        patientClass(pv1, encounter, in);
        location(pv1, encounter).ifPresent(resources::add);
        on(
                pv1.getPv14_AdmissionType(),
                f -> Optional.ofNullable(StToString.map(f)).flatMap(Table0007::toFhir),
                f -> encounter.addType(new CodeableConcept(f)));
        // spotless:off
        participants(pv1.getPv17_AttendingDoctor(), "ATND", "PV1-7", encounter, practitioners);
        participants(pv1.getPv18_ReferringDoctor(), "REF", "PV1-8", encounter, practitioners);
        participants(pv1.getPv19_ConsultingDoctor(), "CON", "PV1-9", encounter, practitioners);
        on(pv1.getPv110_HospitalService(), f -> Optional.ofNullable(StToString.map(f)), f -> encounter.setServiceType(new CodeableConcept().setText(f)));
        participants(pv1.getPv117_AdmittingDoctor(), "ADM", "PV1-17", encounter, practitioners);
        on(pv1.getPv119_VisitNumber(), f -> visitNumber(f, in.at("PV1-19")), encounter::addIdentifier);
        period(pv1, encounter, in);
        on(pv1.getPv150_AlternateVisitID(), f -> identifier(f, in.at("PV1-50")), encounter::addIdentifier);
        participants(pv1.getPv152_OtherHealthcareProvider(), "PART", "PV1-52", encounter, practitioners);
        // spotless:on
        return resources;
    }

    /** R4 demands a class and a status; what table 0004 does not hold is unknown. */
    private static void patientClass(PV1 pv1, Encounter encounter, Reading in) {
        String code = StToString.map(pv1.getPv12_PatientClass());
        Optional<Coding> coding = code == null ? Optional.empty() : Table0004.toFhir(code);
        if (code != null && coding.isEmpty()) {
            in.at("PV1-2").note("taken as unknown: not in HL7 table 0004");
        }
        encounter.setClass_(coding.orElseGet(() -> Table0004.toFhir("U").orElseThrow()));
        encounter.setStatus(
                Table0004.toStatus(coding.isEmpty() ? "U" : code).orElse(EncounterStatus.UNKNOWN));
    }

    private static Optional<Location> location(PV1 pv1, Encounter encounter) {
        PL pl = pv1.getPv13_AssignedPatientLocation();
        String name = place(pl);
        if (name == null) {
            return Optional.empty();
        }
        var location = new Location().setName(name);
        location.setId(encounter.getIdElement().getIdPart() + "-location");
        boolean preadmit = "P".equals(StToString.map(pv1.getPv12_PatientClass()));
        encounter
                .addLocation()
                .setLocation(new Reference("Location/" + location.getIdElement().getIdPart()))
                .setStatus(
                        preadmit
                                ? EncounterLocationStatus.PLANNED
                                : EncounterLocationStatus.ACTIVE);
        return Optional.of(location);
    }

    /** Facility, point of care, room and bed as one name. */
    private static String place(PL pl) {
        var name = new StringBuilder();
        for (String part :
                new String[] {
                    StToString.map(pl.getPl4_Facility().getHd1_NamespaceID()),
                    StToString.map(pl.getPl1_PointOfCare()),
                    StToString.map(pl.getPl2_Room()),
                    StToString.map(pl.getPl3_Bed())
                }) {
            if (part != null) {
                name.append(name.isEmpty() ? "" : " ").append(part);
            }
        }
        return name.isEmpty() ? null : name.toString();
    }

    private static void participants(
            XCN[] field,
            String type,
            String name,
            Encounter encounter,
            Practitioners practitioners) {
        for (XCN xcn : field) {
            practitioners.of(xcn, name).ifPresent(p -> participant(encounter, type, p));
        }
    }

    private static void participant(Encounter encounter, String type, Reference practitioner) {
        encounter
                .addParticipant()
                .setIndividual(practitioner)
                .addType(new CodeableConcept(new Coding().setSystem(PARTICIPATION).setCode(type)));
    }

    private static Optional<Identifier> visitNumber(CX cx, Reading in) {
        return identifier(cx, in).map(i -> i.setType(Table0203.toFhir("VN")));
    }

    private static Optional<Identifier> identifier(CX cx, Reading in) {
        Optional<Identifier> identifier = CxToIdentifier.map(cx, in);
        identifier
                .filter(i -> !i.hasSystem())
                .ifPresent(i -> i.setSystem(in.systems().ofSender("visit")));
        return identifier;
    }

    private static void period(PV1 pv1, Encounter encounter, Reading in) {
        TS[] discharges = pv1.getPv145_DischargeDateTime();
        TS start = pv1.getPv144_AdmitDateTime();
        if (discharges.length == 0) {
            encounter.setPeriod(DrToPeriod.map(start, new TS(pv1.getMessage()), in.at("PV1-44")));
            return;
        }
        encounter.setPeriod(DrToPeriod.map(start, discharges[0], in.at("PV1-45")));
        if (encounter.getPeriod().hasEnd()) {
            encounter.setStatus(EncounterStatus.FINISHED);
        }
    }
}
