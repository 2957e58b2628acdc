package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.ecgdicom.OrderContext.Authority;
import dev.isoline.ecgdicom.OrderContext.Code;
import dev.isoline.ecgdicom.OrderContext.Identifier;
import java.util.List;

/** Items of sequences that several modules have. */
public final class CodeItems {

    private CodeItems() {}

    /** Code Sequence macro, PS3.3 table 8.8-1; no item where the code is not complete. */
    public static List<DataSet> code(Code code) {
        if (code.value().isEmpty() || code.scheme().isEmpty() || code.meaning().isEmpty()) {
            return List.of();
        }
        return List.of(
                new ModuleWriter("Code Sequence (PS3.3 8.8)")
                        .type1(Tag.CodeValue, code.value())
                        .type1(Tag.CodingSchemeDesignator, code.scheme())
                        .type1(Tag.CodeMeaning, code.meaning())
                        .dataSet());
    }

    /** Who assigned an identifier that has a value. */
    static List<DataSet> issuer(Identifier identifier) {
        return identifier.value().isEmpty() ? List.of() : authority(identifier.authority());
    }

    /** HL7v2 Hierarchic Designator macro, PS3.3 table 10-17. */
    public static List<DataSet> authority(Authority authority) {
        if (authority.isUnknown()) {
            return List.of();
        }
        boolean universal = !authority.universalId().isEmpty();
        return List.of(
                new ModuleWriter("Hierarchic Designator (PS3.3 10.14)")
                        .type1C(!universal, Tag.LocalNamespaceEntityID, authority.name())
                        .type1C(universal, Tag.UniversalEntityID, authority.universalId())
                        .type1C(universal, Tag.UniversalEntityIDType, authority.universalIdType())
                        .dataSet());
    }
}
