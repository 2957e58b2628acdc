package dev.isoline.dicom.json;

import dev.isoline.dicom.Vr;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** What a VR is in JSON, PS3.18 table F.2.3-1. */
final class JsonVr {

    /** Base64 of the value field. */
    private static final Set<Vr> BINARY = Set.of(Vr.OB, Vr.OD, Vr.OF, Vr.OL, Vr.OV, Vr.OW, Vr.UN);

    /** One value, in which a backslash is a character; PS3.5 table 6.2-1. */
    private static final Set<Vr> SINGLE = Set.of(Vr.LT, Vr.ST, Vr.UT, Vr.UR);

    /** F.2.2: what may be a BulkDataURI. */
    private static final Set<Vr> BULK =
            Set.of(
                    Vr.DS, Vr.FL, Vr.FD, Vr.IS, Vr.LT, Vr.OB, Vr.OD, Vr.OF, Vr.OL, Vr.OV, Vr.OW,
                    Vr.SL, Vr.SS, Vr.ST, Vr.SV, Vr.UC, Vr.UL, Vr.UN, Vr.US, Vr.UT, Vr.UV);

    private static final Map<String, Vr> BY_NAME =
            Arrays.stream(Vr.values()).collect(Collectors.toMap(Vr::name, Function.identity()));

    private JsonVr() {}

    static boolean isBinary(Vr vr) {
        return BINARY.contains(vr);
    }

    static boolean isSingle(Vr vr) {
        return SINGLE.contains(vr);
    }

    static boolean mayBeBulk(Vr vr) {
        return BULK.contains(vr);
    }

    static Optional<Vr> named(String name) {
        return Optional.ofNullable(BY_NAME.get(name));
    }
}
