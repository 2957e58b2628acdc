package dev.isoline.hl7v2fhir;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;

/** The two ways a mapping row reads its field. */
final class Fields {

    private Fields() {}

    /** Every repetition that holds something. */
    static <V2, R4> void each(V2[] field, Function<V2, Optional<R4>> map, Consumer<R4> target) {
        for (V2 repetition : field) {
            map.apply(repetition).ifPresent(target);
        }
    }

    /** A field that does not repeat. */
    static <V2, R4> void on(V2 field, Function<V2, Optional<R4>> map, Consumer<R4> target) {
        map.apply(field).ifPresent(target);
    }
}
