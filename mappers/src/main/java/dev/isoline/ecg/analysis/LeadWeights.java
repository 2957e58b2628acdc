package dev.isoline.ecg.analysis;

import java.util.List;

/**
 * How much each lead counts while beats are looked for. A lead that is unusable in a second, the
 * one before or the one after counts nothing, unless no other is better; the others count by how
 * far their QRS complexes stand out of their noise, and not at all beside a much clearer one.
 */
final class LeadWeights {

    /** Of the clearest lead's weight; less counts nothing. */
    private static final double LEAST = 0.3;

    /** Complexes; a disturbance that is higher counts as if it were so high. */
    private static final double MOST = 2;

    private final List<DetectionLead> leads;
    private final boolean[] usable;
    private final double[] weight;
    private final double[] gain;
    private final double[] most;
    private double offset;
    private double clearest;

    LeadWeights(List<DetectionLead> leads) {
        this.leads = leads;
        usable = new boolean[leads.size()];
        weight = new double[leads.size()];
        gain = new double[leads.size()];
        most = new double[leads.size()];
    }

    /** Looks at what is usable in a second, the middle of which is at a step. */
    void second(int second, long step) {
        leads.forEach(lead -> lead.look(step));
        if (!choose(Math.max(0, second - 1), second + 1)) {
            choose(second, second);
        }
        update();
    }

    private boolean choose(int from, int to) {
        boolean any = false;
        for (int i = 0; i < usable.length; i++) {
            usable[i] = leads.get(i).usable(from, to);
            any |= usable[i];
        }
        return any;
    }

    /** After heights of complexes or noise changed. */
    void update() {
        clearest = 0;
        for (int i = 0; i < weight.length; i++) {
            weight[i] = usable[i] ? leads.get(i).clarity() : 0;
            clearest = Math.max(clearest, weight[i]);
        }
        double sum = 0;
        for (int i = 0; i < weight.length; i++) {
            weight[i] = weight[i] < LEAST * clearest ? 0 : weight[i];
            sum += weight[i];
        }
        offset = 0;
        for (int i = 0; i < weight.length; i++) {
            weight[i] = sum == 0 ? 0 : weight[i] / sum;
            gain[i] = weight[i] / leads.get(i).span();
            most[i] = MOST * leads.get(i).complex();
            offset += gain[i] * leads.get(i).noise();
        }
    }

    /** Height over all leads at a step, but for the {@link #offset()}. */
    double height(long step) {
        double height = 0;
        for (int i = 0; i < gain.length; i++) {
            if (gain[i] > 0) {
                height += gain[i] * Math.min(most[i], leads.get(i).filter().height(step));
            }
        }
        return height;
    }

    double offset() {
        return offset;
    }

    /** Weight of a lead; all together 1, or 0 when none is usable. */
    double weight(int lead) {
        return weight[lead];
    }

    boolean usable(int lead) {
        return usable[lead];
    }

    /** Clarity of the clearest lead. */
    double clearest() {
        return clearest;
    }
}
