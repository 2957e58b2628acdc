package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.v251.datatype.XCN;
import dev.isoline.hl7v2fhir.table.Table0203;
import dev.isoline.order.StableId;
import java.util.Optional;
import org.hl7.fhir.r4.model.HumanName;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Practitioner;
import org.hl7.fhir.r4.model.StringType;

/**
 * XCN (HL7 v2.5.1 ch. 2.A.86) to Practitioner. Rows: XCN[Practitioner];
 * docs/mappings/xcn-to-practitioner.md.
 */
public final class XcnToPractitioner {

    private static final String NPI = "http://hl7.org/fhir/sid/us-npi";

    private XcnToPractitioner() {}

    /** Empty when neither an identifier nor a name is given. */
    public static Optional<Practitioner> map(XCN xcn, Reading in) {
        var practitioner = new Practitioner();
        identifier(xcn, in).ifPresent(practitioner::addIdentifier);
        name(xcn, in).ifPresent(practitioner::addName);
        if (practitioner.isEmpty()) {
            return Optional.empty();
        }
        practitioner.setId(id(practitioner, in));
        String degree = StToString.map(xcn.getXcn7_DegreeEgMD());
        if (degree != null) {
            practitioner.addQualification().getCode().setText(degree);
        }
        return Optional.of(practitioner);
    }

    private static Optional<Identifier> identifier(XCN xcn, Reading in) {
        String value = StToString.map(xcn.getXcn1_IDNumber());
        if (value == null) {
            return Optional.empty();
        }
        String type = StToString.map(xcn.getXcn13_IdentifierTypeCode());
        var identifier = new Identifier().setValue(value).setSystem(system(xcn, type, in));
        if (type != null) {
            identifier.setType(Table0203.toFhir(type));
        }
        String checkDigit = StToString.map(xcn.getXcn11_IdentifierCheckDigit());
        if (checkDigit != null) {
            identifier.addExtension(CxToIdentifier.CHECK_DIGIT, new StringType(checkDigit));
        }
        return Optional.of(identifier);
    }

    /** Without XCN.9 an NPI has its national system, anything else is the sender's own number. */
    private static String system(XCN xcn, String type, Reading in) {
        String system = in.systems().of(xcn.getXcn9_AssigningAuthority());
        boolean npi =
                "NPI".equals(type)
                        || "NPI"
                                .equals(
                                        xcn.getXcn9_AssigningAuthority()
                                                .getHd1_NamespaceID()
                                                .getValue());
        if (npi) {
            return NPI;
        }
        return system == null ? in.systems().ofSender("practitioner") : system;
    }

    private static Optional<HumanName> name(XCN xcn, Reading in) {
        var name = new HumanName();
        XpnToHumanName.family(xcn.getXcn2_FamilyName(), name);
        XpnToHumanName.given(name, StToString.map(xcn.getXcn3_GivenName()));
        XpnToHumanName.given(
                name, StToString.map(xcn.getXcn4_SecondAndFurtherGivenNamesOrInitialsThereof()));
        XpnToHumanName.suffix(name, StToString.map(xcn.getXcn5_SuffixEgJRorIII()));
        XpnToHumanName.prefix(name, StToString.map(xcn.getXcn6_PrefixEgDR()));
        XpnToHumanName.suffix(name, StToString.map(xcn.getXcn21_ProfessionalSuffix()));
        if (name.isEmpty()) {
            return Optional.empty();
        }
        XpnToHumanName.use(name, StToString.map(xcn.getXcn10_NameTypeCode()), 10, in);
        Period dates =
                DrToPeriod.map(xcn.getXcn19_EffectiveDate(), xcn.getXcn20_ExpirationDate(), in);
        name.setPeriod(
                dates == null ? DrToPeriod.map(xcn.getXcn17_NameValidityRange(), in) : dates);
        return Optional.of(name);
    }

    private static String id(Practitioner practitioner, Reading in) {
        if (practitioner.hasIdentifier()) {
            Identifier identifier = practitioner.getIdentifierFirstRep();
            return StableId.of("Practitioner", identifier.getSystem(), identifier.getValue());
        }
        HumanName name = practitioner.getNameFirstRep();
        return StableId.of("Practitioner", in.systems().ofSender(), name.getNameAsSingleString());
    }
}
