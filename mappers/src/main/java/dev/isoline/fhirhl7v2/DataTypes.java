package dev.isoline.fhirhl7v2;

import ca.uhn.hl7v2.model.DataTypeException;
import ca.uhn.hl7v2.model.v251.datatype.CE;
import ca.uhn.hl7v2.model.v251.datatype.CX;
import ca.uhn.hl7v2.model.v251.datatype.EI;
import ca.uhn.hl7v2.model.v251.datatype.HD;
import ca.uhn.hl7v2.model.v251.datatype.XCN;
import ca.uhn.hl7v2.model.v251.datatype.XPN;
import java.util.List;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.HumanName;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Practitioner;
import org.hl7.fhir.r4.model.PrimitiveType;

/** FHIR R4 data types to those of HL7 v2.5.1 ch. 2.A; rows: docs/mappings/report-to-oru.md. */
final class DataTypes {

    private final MessageContext context;

    DataTypes(MessageContext context) {
        this.context = context;
    }

    void cx(Identifier identifier, CX cx) throws DataTypeException {
        cx.getCx1_IDNumber().setValue(identifier.getValue());
        hd(identifier.getSystem(), cx.getCx4_AssigningAuthority());
        cx.getCx5_IdentifierTypeCode().setValue(identifier.getType().getCodingFirstRep().getCode());
    }

    void ei(Identifier identifier, EI ei) throws DataTypeException {
        var authority = AssigningAuthority.of(identifier.getSystem(), context.authorities());
        ei.getEi1_EntityIdentifier().setValue(identifier.getValue());
        ei.getEi2_NamespaceID().setValue(authority.namespace());
        ei.getEi3_UniversalID().setValue(authority.universalId());
        ei.getEi4_UniversalIDType().setValue(authority.universalIdType());
    }

    private void hd(String system, HD hd) throws DataTypeException {
        var authority = AssigningAuthority.of(system, context.authorities());
        hd.getHd1_NamespaceID().setValue(authority.namespace());
        hd.getHd2_UniversalID().setValue(authority.universalId());
        hd.getHd3_UniversalIDType().setValue(authority.universalIdType());
    }

    void xcn(Practitioner practitioner, XCN xcn) throws DataTypeException {
        HumanName name = practitioner.getNameFirstRep();
        xcn.getXcn2_FamilyName().getFn1_Surname().setValue(name.getFamily());
        xcn.getXcn3_GivenName().setValue(part(name.getGiven(), 0));
        xcn.getXcn4_SecondAndFurtherGivenNamesOrInitialsThereof()
                .setValue(part(name.getGiven(), 1));
        xcn.getXcn6_PrefixEgDR().setValue(part(name.getPrefix(), 0));
        if (practitioner.hasIdentifier()) {
            Identifier identifier = practitioner.getIdentifierFirstRep();
            xcn.getXcn1_IDNumber().setValue(identifier.getValue());
            hd(identifier.getSystem(), xcn.getXcn9_AssigningAuthority());
            String type = identifier.getType().getCodingFirstRep().getCode();
            xcn.getXcn13_IdentifierTypeCode().setValue(type);
        }
    }

    static void xpn(HumanName name, XPN xpn) throws DataTypeException {
        xpn.getXpn1_FamilyName().getFn1_Surname().setValue(name.getFamily());
        xpn.getXpn2_GivenName().setValue(part(name.getGiven(), 0));
        xpn.getXpn3_SecondAndFurtherGivenNamesOrInitialsThereof().setValue(rest(name.getGiven()));
        xpn.getXpn4_SuffixEgJRorIII().setValue(part(name.getSuffix(), 0));
        xpn.getXpn5_PrefixEgDR().setValue(part(name.getPrefix(), 0));
        xpn.getXpn7_NameTypeCode().setValue(Tables.nameType(name.getUse()));
    }

    /** The first coding and our own, else the second; text alone goes where a display would. */
    static void ce(CodeableConcept concept, CE ce) throws DataTypeException {
        if (concept.hasCoding()) {
            Coding first = concept.getCoding().get(0);
            ce.getCe1_Identifier().setValue(first.getCode());
            ce.getCe2_Text().setValue(first.hasDisplay() ? first.getDisplay() : concept.getText());
            ce.getCe3_NameOfCodingSystem().setValue(Tables.codingSystem(first.getSystem()));
        } else {
            ce.getCe2_Text().setValue(concept.getText());
        }
        if (concept.getCoding().size() > 1) {
            Coding second = alternate(concept.getCoding());
            ce.getCe4_AlternateIdentifier().setValue(second.getCode());
            ce.getCe5_AlternateText().setValue(second.getDisplay());
            ce.getCe6_NameOfAlternateCodingSystem()
                    .setValue(Tables.codingSystem(second.getSystem()));
        }
    }

    private static Coding alternate(List<Coding> codings) {
        return codings.stream()
                .skip(1)
                .filter(coding -> Tables.codingSystem(coding.getSystem()).equals("99ISOLINE"))
                .findFirst()
                .orElse(codings.get(1));
    }

    private static String part(List<? extends PrimitiveType<String>> parts, int index) {
        return index < parts.size() ? parts.get(index).getValue() : "";
    }

    private static String rest(List<? extends PrimitiveType<String>> given) {
        return String.join(" ", given.stream().skip(1).map(PrimitiveType::getValue).toList());
    }
}
