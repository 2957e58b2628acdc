package dev.isoline.ecg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RankedValueTest {

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 8, 25, 61, 500})
    void is_what_sorting_puts_in_its_place(int count) {
        var chance = new Random(count);
        for (int i = 0; i < 200; i++) {
            int kinds = 1 + chance.nextInt(2 * count);
            var values = chance.ints(count + 3L, 0, kinds).asDoubleStream().toArray();
            var sorted = Arrays.copyOf(values, count);
            Arrays.sort(sorted);
            int rank = chance.nextInt(count);
            assertThat(RankedValue.of(values, count, rank)).isEqualTo(sorted[rank]);
            assertThat(RankedValue.middle(values, count)).isEqualTo(sorted[count / 2]);
        }
    }
}
