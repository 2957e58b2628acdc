package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.v251.datatype.SAD;
import ca.uhn.hl7v2.model.v251.datatype.XAD;
import dev.isoline.hl7v2fhir.table.Table0190;
import java.util.Optional;
import org.hl7.fhir.r4.model.Address;
import org.hl7.fhir.r4.model.Period;

/**
 * XAD (HL7 v2.5.1 ch. 2.A.84) to Address. Rows: XAD[Address], SAD[Address];
 * docs/mappings/xad-to-address.md.
 */
public final class XadToAddress {

    private XadToAddress() {}

    /** Empty when no part of the address is given. */
    public static Optional<Address> map(XAD xad, Reading in) {
        var address = new Address();
        street(xad.getXad1_StreetAddress(), address);
        line(address, StToString.map(xad.getXad2_OtherDesignation()));
        address.setCity(StToString.map(xad.getXad3_City()));
        address.setState(StToString.map(xad.getXad4_StateOrProvince()));
        address.setPostalCode(StToString.map(xad.getXad5_ZipOrPostalCode()));
        address.setCountry(StToString.map(xad.getXad6_Country()));
        address.setDistrict(StToString.map(xad.getXad9_CountyParishCode()));
        if (address.isEmpty()) {
            return Optional.empty();
        }
        kind(StToString.map(xad.getXad7_AddressType()), address, in);
        address.setPeriod(period(xad, in));
        return Optional.of(address);
    }

    private static void street(SAD sad, Address address) {
        line(address, StToString.map(sad.getSad1_StreetOrMailingAddress()));
        line(address, StToString.map(sad.getSad2_StreetName()));
        line(address, StToString.map(sad.getSad3_DwellingNumber()));
    }

    private static void line(Address address, String line) {
        if (line != null) {
            address.addLine(line);
        }
    }

    private static void kind(String code, Address address, Reading in) {
        if (code == null) {
            return;
        }
        Table0190.toUse(code).ifPresent(address::setUse);
        Table0190.toType(code).ifPresent(address::setType);
        if (!address.hasUse() && !address.hasType()) {
            in.note(7, "left out: no FHIR address use or type for this code of table 0190");
        }
    }

    private static Period period(XAD xad, Reading in) {
        Period dates =
                DrToPeriod.map(xad.getXad13_EffectiveDate(), xad.getXad14_ExpirationDate(), in);
        return dates == null ? DrToPeriod.map(xad.getXad12_AddressValidityRange(), in) : dates;
    }
}
