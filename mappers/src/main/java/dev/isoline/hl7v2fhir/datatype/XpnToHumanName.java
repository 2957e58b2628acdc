package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.v251.datatype.FN;
import ca.uhn.hl7v2.model.v251.datatype.XPN;
import dev.isoline.hl7v2fhir.table.Table0200;
import java.util.Optional;
import org.hl7.fhir.r4.model.HumanName;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.StringType;

/**
 * XPN (HL7 v2.5.1 ch. 2.A.88) to HumanName. Rows: XPN[HumanName], FN[HumanName];
 * docs/mappings/xpn-to-humanname.md.
 */
public final class XpnToHumanName {

    private static final String EXTENSION = "http://hl7.org/fhir/StructureDefinition/humanname-";

    private XpnToHumanName() {}

    /** Empty when no part of the name is given. */
    public static Optional<HumanName> map(XPN xpn, Reading in) {
        var name = new HumanName();
        family(xpn.getXpn1_FamilyName(), name);
        given(name, StToString.map(xpn.getXpn2_GivenName()));
        given(name, StToString.map(xpn.getXpn3_SecondAndFurtherGivenNamesOrInitialsThereof()));
        suffix(name, StToString.map(xpn.getXpn4_SuffixEgJRorIII()));
        prefix(name, StToString.map(xpn.getXpn5_PrefixEgDR()));
        suffix(name, StToString.map(xpn.getXpn6_DegreeEgMD()));
        suffix(name, StToString.map(xpn.getXpn14_ProfessionalSuffix()));
        if (name.isEmpty()) {
            return Optional.empty();
        }
        use(name, StToString.map(xpn.getXpn7_NameTypeCode()), 7, in);
        name.setPeriod(period(xpn, in));
        return Optional.of(name);
    }

    static void family(FN fn, HumanName name) {
        String surname = StToString.map(fn.getFn1_Surname());
        if (surname != null) {
            name.setFamily(surname);
        }
        part(name, "own-prefix", StToString.map(fn.getFn2_OwnSurnamePrefix()));
        part(name, "own-name", StToString.map(fn.getFn3_OwnSurname()));
        part(name, "partner-prefix", StToString.map(fn.getFn4_SurnamePrefixFromPartnerSpouse()));
        part(name, "partner-name", StToString.map(fn.getFn5_SurnameFromPartnerSpouse()));
    }

    private static void part(HumanName name, String extension, String value) {
        if (value != null) {
            name.getFamilyElement().addExtension(EXTENSION + extension, new StringType(value));
        }
    }

    static void given(HumanName name, String given) {
        if (given != null) {
            name.addGiven(given);
        }
    }

    static void suffix(HumanName name, String suffix) {
        if (suffix != null) {
            name.addSuffix(suffix);
        }
    }

    static void prefix(HumanName name, String prefix) {
        if (prefix != null) {
            name.addPrefix(prefix);
        }
    }

    static void use(HumanName name, String code, int component, Reading in) {
        if (code != null) {
            Table0200.toFhir(code)
                    .ifPresentOrElse(
                            name::setUse,
                            () ->
                                    in.note(
                                            component,
                                            "left out: no FHIR name use for this code of table 0200"));
        }
    }

    private static Period period(XPN xpn, Reading in) {
        Period dates =
                DrToPeriod.map(xpn.getXpn12_EffectiveDate(), xpn.getXpn13_ExpirationDate(), in);
        return dates == null ? DrToPeriod.map(xpn.getXpn10_NameValidityRange(), in) : dates;
    }
}
