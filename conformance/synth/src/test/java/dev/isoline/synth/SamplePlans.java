package dev.isoline.synth;

import java.util.List;
import java.util.Set;

/** Plans the tests share. */
final class SamplePlans {

    /** 60 s, two ventricular and one supraventricular beat, a pause of 2.5 s. */
    static final EcgPlan ECTOPIC =
            new EcgPlan(
                    250,
                    60,
                    List.of("MLII", "V1"),
                    7,
                    new EcgPlan.Rate(60, 90, 0.03, 0.01),
                    Set.of(10, 40),
                    Set.of(20),
                    new EcgPlan.Pause(30, 2.5),
                    Noise.AMBULATORY);

    private SamplePlans() {}
}
