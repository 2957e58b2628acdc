package dev.isoline.ecg.analysis;

import java.util.List;
import java.util.function.LongConsumer;

/**
 * Finds the QRS complexes of all leads together: the heights of the leads, each measured between
 * its own noise and its own complexes, are added by weight; a peak of the sum is a candidate.
 */
final class QrsDetector implements QrsDecision.Outcome {

    private static final double REFRACTORY_SECONDS = 0.2;
    private static final double LEARNING_SECONDS = 8;
    private static final double SLOPE_REACH_SECONDS = 0.08;

    /** A complex is at most so far apart in two leads. */
    private static final double SAME_SECONDS = 0.06;

    /** Wide enough for the rise and the fall of a broad ventricular complex. */
    private static final double STEP_REACH_SECONDS = 0.16;

    private final Pace pace;
    private final List<DetectionLead> leads;
    private final LeadWeights weights;
    private final LongConsumer complexes;
    private final QrsDecision decision;
    private final int refractory;
    private final int same;
    private long origin;
    private boolean learnt;
    private int second = -1;
    private long at;
    private double before;
    private double best;
    private long bestAt;

    /**
     * @param complexes takes the positions of the middles of QRS complexes in order of time
     */
    QrsDetector(Pace pace, List<DetectionLead> leads, LongConsumer complexes) {
        this.pace = pace;
        this.leads = leads;
        this.complexes = complexes;
        weights = new LeadWeights(leads);
        decision = new QrsDecision(pace, this);
        refractory = pace.steps(REFRACTORY_SECONDS);
        same = pace.steps(SAME_SECONDS);
    }

    void begin(long position) {
        origin = position;
        at = 0;
        second = -1;
        before = 0;
        none();
    }

    private void none() {
        best = 0;
        bestAt = -1;
    }

    /** Looks at the steps the leads can judge whose second and the next have passed. */
    void advance(long recorded) {
        long until = (recorded - origin - leads.get(0).filter().reach()) / pace.step();
        leads.forEach(lead -> lead.filter().advance(until));
        if (learnt || until >= pace.steps(LEARNING_SECONDS + 1)) {
            long passed = (long) ((Math.floor(recorded / pace.hz()) - 1) * pace.hz());
            look(Math.min(leads.get(0).filter().end(), (passed - origin) / pace.step()));
        }
    }

    /** The recording ends or has a gap here; the leads hold a second more. */
    void finish(long recorded) {
        long until = (recorded - origin) / pace.step();
        leads.forEach(lead -> lead.filter().advance(until + lead.filter().delay()));
        look(until);
        if (bestAt >= 0) {
            candidate();
        }
        decision.interrupt(until);
    }

    private void learn() {
        long seconds = leads.get(0).filter().end() / pace.steps(1);
        for (var lead : leads) {
            lead.learn((int) Math.max(1, Math.min(LEARNING_SECONDS, seconds)));
        }
        learnt = true;
    }

    private void look(long until) {
        if (!learnt) {
            learn();
        }
        while (at < until) {
            long from = origin + at * pace.step();
            second = (int) (from / pace.hz());
            weights.second(second, at + pace.steps(0.5));
            long next = (long) ((second + 1) * pace.hz());
            long to = Math.min(until, Math.max(at + 1, (next - origin) / pace.step()));
            while (peak(to)) {
                candidate();
                none();
            }
            decision.searchBack(at - 2L * refractory);
        }
    }

    /**
     * Goes on to where a peak is known to have no higher one within the refractory period on either
     * side; false when there is none before a step. Apart from what is done with the peak, so that
     * the compiler of the JVM takes little at a time.
     */
    private boolean peak(long until) {
        boolean found = false;
        for (; at < until && !found; at++) {
            double height = weights.height(at);
            if (height > best && (bestAt >= 0 || height > before)) {
                best = height;
                bestAt = at;
            } else {
                found = bestAt >= 0 && at - bestAt >= refractory;
            }
            before = height;
        }
        return found;
    }

    private void candidate() {
        double slope = 0;
        double balance = 0;
        int slopeReach = pace.steps(SLOPE_REACH_SECONDS);
        int stepReach = pace.steps(STEP_REACH_SECONDS);
        for (int i = 0; i < leads.size(); i++) {
            double weight = weights.weight(i);
            if (weight > 0) {
                var lead = leads.get(i);
                slope += weight * lead.filter().steepest(bestAt, slopeReach) / lead.complex();
                balance += weight * lead.filter().balance(bestAt, stepReach);
            }
        }
        decision.take(new Candidate(bestAt, best - weights.offset(), slope, balance));
    }

    @Override
    public void complex(Candidate candidate) {
        for (int i = 0; i < leads.size(); i++) {
            if (weights.usable(i)) {
                leads.get(i).complex(leads.get(i).filter().highest(candidate.step(), same));
            }
        }
        weights.update();
        complexes.accept(origin + candidate.step() * pace.step());
    }

    @Override
    public void noise(Candidate candidate) {
        for (int i = 0; i < leads.size(); i++) {
            if (weights.usable(i)) {
                leads.get(i).noise(leads.get(i).filter().height(candidate.step()));
            }
        }
        weights.update();
    }

    LeadWeights weights() {
        return weights;
    }
}
