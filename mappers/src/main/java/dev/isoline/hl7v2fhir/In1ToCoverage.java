package dev.isoline.hl7v2fhir;

import static dev.isoline.hl7v2fhir.Fields.each;
import static dev.isoline.hl7v2fhir.Fields.on;

import ca.uhn.hl7v2.model.v251.datatype.CE;
import ca.uhn.hl7v2.model.v251.datatype.CX;
import ca.uhn.hl7v2.model.v251.datatype.XON;
import ca.uhn.hl7v2.model.v251.segment.IN1;
import ca.uhn.hl7v2.model.v251.segment.IN2;
import dev.isoline.hl7v2fhir.datatype.CeToCodeableConcept;
import dev.isoline.hl7v2fhir.datatype.CxToIdentifier;
import dev.isoline.hl7v2fhir.datatype.DrToPeriod;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.datatype.StToString;
import dev.isoline.hl7v2fhir.datatype.XadToAddress;
import dev.isoline.hl7v2fhir.datatype.XonToOrganization;
import dev.isoline.hl7v2fhir.datatype.XtnToContactPoint;
import dev.isoline.hl7v2fhir.table.SubscriberRelationship;
import dev.isoline.hl7v2fhir.table.Table0063;
import dev.isoline.order.StableId;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeType;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.Coverage.CoverageStatus;
import org.hl7.fhir.r4.model.DomainResource;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Organization;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.RelatedPerson;

/**
 * IN1 (HL7 v2.5.1 ch. 6.5.6), completed from IN2, to Coverage with its payor and subscriber. Rows:
 * IN1[Coverage]. Left out, and why, and what we add: docs/mappings/in1-to-coverage.md.
 */
public final class In1ToCoverage {

    private static final String CLASSES = "http://terminology.hl7.org/CodeSystem/coverage-class";
    private static final String DATA_ABSENT =
            "http://hl7.org/fhir/StructureDefinition/data-absent-reason";

    private final IN1 in1;
    private final IN2 in2;
    private final Reference patient;
    private final Reading in;
    private final Coverage coverage = new Coverage();
    private final List<DomainResource> related = new ArrayList<>();

    private In1ToCoverage(IN1 in1, IN2 in2, Reference patient, Reading in) {
        this.in1 = in1;
        this.in2 = in2;
        this.patient = patient;
        this.in = in;
    }

    /** A coverage with the payor, policy holder and subscriber it refers to. */
    public record Result(Coverage coverage, List<DomainResource> related) {}

    /**
     * @param in2 the IN2 that follows; null when there is none
     * @param order of this insurance among those of the message, from 1
     * @param received tells whether the plan has ended
     */
    public static Result map(
            IN1 in1, IN2 in2, int order, Reference patient, Instant received, Reading in) {
        return new In1ToCoverage(in1, in2, patient, in).map(order, received);
    }

    private Result map(int order, Instant received) {
        coverage.setBeneficiary(patient).setOrder(order);
        coverage.setId(StableId.of("Coverage", patient.getReference(), key(), "" + order));
        // spotless:off
        on(in1.getIn12_InsurancePlanID(), this::planId, coverage::addIdentifier);                  // CWE[Identifier]
        on(in1.getIn12_InsurancePlanID(), CeToCodeableConcept::map, this::plan);                   // our own
        payor();                                                                                   // IN1-3, -4, -5, -7
        group();                                                                                   // IN1-8, -9: our own
        policyHolder();                                                                            // IN1-10, -11
        coverage.setPeriod(DrToPeriod.map(in1.getIn112_PlanEffectiveDate(), in1.getIn113_PlanExpirationDate(), in.at("IN1-12")));
        on(in1.getIn115_PlanType(), f -> Optional.ofNullable(StToString.map(f)), f -> coverage.setType(new CodeableConcept().setText(f)));
        subscriber();                                                                              // IN1-16 to -19, -43
        coverage.setSubscriberId(subscriberId());                                                  // IN1-36, IN1-49: our own
        // spotless:on
        coverage.setStatus(hasEnded(received) ? CoverageStatus.CANCELLED : CoverageStatus.ACTIVE);
        return new Result(coverage, related);
    }

    /** What tells one insurance of a patient from another. */
    private String key() {
        return String.join(
                "\u001f",
                nonNull(StToString.first(in1.getIn12_InsurancePlanID())),
                nonNull(
                        in1.getIn13_InsuranceCompanyIDReps() == 0
                                ? null
                                : StToString.first(in1.getIn13_InsuranceCompanyID(0))),
                nonNull(
                        in1.getIn14_InsuranceCompanyNameReps() == 0
                                ? null
                                : StToString.first(in1.getIn14_InsuranceCompanyName(0))),
                nonNull(subscriberId()));
    }

    private static String nonNull(String text) {
        return text == null ? "" : text;
    }

    private Optional<Identifier> planId(CE plan) {
        String value = StToString.map(plan.getCe1_Identifier());
        return Optional.ofNullable(value)
                .map(v -> new Identifier().setValue(v).setSystem(in.systems().ofSender("plan")));
    }

    private void plan(CodeableConcept plan) {
        Coding coding = plan.getCodingFirstRep();
        coverageClass("plan", coding.getCode(), coding.getDisplay());
    }

    private void coverageClass(String type, String value, String name) {
        if (value != null) {
            coverage.addClass_()
                    .setType(new CodeableConcept(new Coding().setSystem(CLASSES).setCode(type)))
                    .setValue(value)
                    .setName(name);
        }
    }

    private void payor() {
        XON[] names = in1.getIn14_InsuranceCompanyName();
        Organization payor =
                names.length == 0
                        ? new Organization()
                        : XonToOrganization.map(names[0], in.at("IN1-4"))
                                .orElseGet(Organization::new);
        each(
                in1.getIn13_InsuranceCompanyID(),
                f -> withSystem(f, "payor", "IN1-3"),
                payor::addIdentifier);
        if (!payor.hasName() && !payor.hasIdentifier()) {
            in.at("IN1-4").note("the coverage names no payor: IN1-3 and IN1-4 are empty");
            coverage.addPayor().addExtension(DATA_ABSENT, new CodeType("unknown"));
            return;
        }
        each(
                in1.getIn15_InsuranceCompanyAddress(),
                f -> XadToAddress.map(f, in.at("IN1-5")),
                payor::addAddress);
        each(
                in1.getIn17_InsuranceCoPhoneNumber(),
                f -> XtnToContactPoint.map(f, in.at("IN1-7")),
                payor::addTelecom);
        coverage.addPayor(add(payor, "payor"));
    }

    private Optional<Identifier> withSystem(CX cx, String kind, String field) {
        Optional<Identifier> identifier = CxToIdentifier.map(cx, in.at(field));
        identifier
                .filter(i -> !i.hasSystem())
                .ifPresent(i -> i.setSystem(in.systems().ofSender(kind)));
        return identifier;
    }

    private void group() {
        XON[] names = in1.getIn19_GroupName();
        String name =
                names.length == 0 ? null : StToString.map(names[0].getXon1_OrganizationName());
        coverageClass("group", StToString.map(in1.getIn18_GroupNumber()), name);
    }

    private void policyHolder() {
        XON[] names = in1.getIn111_InsuredSGroupEmpName();
        Organization holder =
                names.length == 0
                        ? new Organization()
                        : XonToOrganization.map(names[0], in.at("IN1-11"))
                                .orElseGet(Organization::new);
        each(
                in1.getIn110_InsuredSGroupEmpID(),
                f -> withSystem(f, "employer", "IN1-10"),
                holder::addIdentifier);
        if (!holder.isEmpty()) {
            coverage.setPolicyHolder(add(holder, "policy-holder"));
        }
    }

    private Reference add(Organization organization, String role) {
        organization.setId(
                StableId.of(
                        "Organization",
                        patient.getReference(),
                        role,
                        nonNull(organization.getName()),
                        nonNull(organization.getIdentifierFirstRep().getValue())));
        related.add(organization);
        return new Reference("Organization/" + organization.getIdElement().getIdPart())
                .setDisplay(organization.getName());
    }

    private void subscriber() {
        Optional<CodeableConcept> relationship = relationship();
        relationship.ifPresent(coverage::setRelationship);
        if (relationship.filter(r -> "self".equals(r.getCodingFirstRep().getCode())).isPresent()) {
            coverage.setSubscriber(patient.copy());
            return;
        }
        RelatedPerson person = In1ToRelatedPerson.map(in1, in2, patient, in);
        if (person != null) {
            sentRelationship().ifPresent(person::addRelationship);
            related.add(person);
            coverage.setSubscriber(
                    new Reference("RelatedPerson/" + person.getIdElement().getIdPart()));
        }
    }

    /** IN1-17, else IN2-72; the code R4 binds to stands first. */
    private Optional<CodeableConcept> relationship() {
        Optional<CodeableConcept> concept = sentRelationship();
        String code = StToString.map(relationshipField().getCe1_Identifier());
        concept.filter(c -> code != null)
                .ifPresent(c -> c.getCoding().add(0, SubscriberRelationship.of(code)));
        return concept;
    }

    private Optional<CodeableConcept> sentRelationship() {
        return Nk1ToRelatedPerson.coded(relationshipField(), Table0063::toFhir);
    }

    private CE relationshipField() {
        CE sent = in1.getIn117_InsuredSRelationshipToPatient();
        boolean other = StToString.first(sent) == null && in2 != null;
        return other ? in2.getIn272_CMSPatientSRelationshipToInsured() : sent;
    }

    private String subscriberId() {
        String policy = StToString.map(in1.getIn136_PolicyNumber());
        if (policy != null) {
            return policy;
        }
        if (in1.getIn149_InsuredSIDNumberReps() > 0) {
            return StToString.first(in1.getIn149_InsuredSIDNumber(0));
        }
        return in2 == null ? null : StToString.first(in2.getIn261_PatientMemberNumber());
    }

    private boolean hasEnded(Instant received) {
        return coverage.getPeriod().hasEnd()
                && coverage.getPeriod().getEnd().before(Date.from(received));
    }
}
