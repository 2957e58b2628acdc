package dev.isoline.ecg.analysis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Few combinations of factors in which every two values of two factors meet: most faults need no
 * more than two (Kuhn, Wallace and Gallo, IEEE TSE 2004;30:418-421, from memory).
 */
final class Pairwise {

    private static final int OPEN = -1;

    /**
     * Value {@code v} of factor {@code f} together with value {@code w} of factor {@code g > f}.
     */
    private record Pair(int f, int v, int g, int w) {}

    private final int[] sizes;
    private final Set<Pair> missing = new HashSet<>();

    private Pairwise(int... sizes) {
        this.sizes = sizes;
        for (int f = 0; f < sizes.length; f++) {
            for (int g = f + 1; g < sizes.length; g++) {
                for (int i = 0; i < sizes[f] * sizes[g]; i++) {
                    missing.add(new Pair(f, i / sizes[g], g, i % sizes[g]));
                }
            }
        }
    }

    /** Rows of value numbers, for factors of so many values each. */
    static List<int[]> rows(int... sizes) {
        var pairwise = new Pairwise(sizes);
        var rows = new ArrayList<int[]>();
        while (!pairwise.missing.isEmpty()) {
            rows.add(pairwise.row(rows.size()));
        }
        return rows;
    }

    private int[] row(int number) {
        int[] row = new int[sizes.length];
        Arrays.fill(row, OPEN);
        for (int f = 0; f < sizes.length; f++) {
            row[f] = best(row, f, number);
        }
        missing.removeIf(p -> row[p.f] == p.v && row[p.g] == p.w);
        return row;
    }

    /** The value that completes the most pairs, or will; of equal ones another for each row. */
    private int best(int[] row, int factor, int number) {
        int best = 0;
        long most = -1;
        for (int i = 0; i < sizes[factor]; i++) {
            int value = (i + number) % sizes[factor];
            row[factor] = value;
            long weight = missing.stream().mapToLong(p -> weight(p, row, factor)).sum();
            if (weight > most) {
                most = weight;
                best = value;
            }
        }
        return best;
    }

    private long weight(Pair p, int[] row, int factor) {
        boolean first = row[p.f] == p.v;
        boolean second = row[p.g] == p.w;
        if (first && second) {
            return p.f == factor || p.g == factor ? 1000 : 0;
        }
        boolean open = p.f == factor && first && row[p.g] == OPEN;
        return open || p.g == factor && second && row[p.f] == OPEN ? 1 : 0;
    }
}
