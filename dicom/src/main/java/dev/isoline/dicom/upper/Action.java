package dev.isoline.dicom.upper;

import static dev.isoline.dicom.upper.State.*;
import static dev.isoline.dicom.upper.Step.*;

import java.util.List;

/** Actions of the upper layer protocol machine, PS3.8 tables 9-6 to 9-9. */
// spotless:off
enum Action {
    AE_1(STA_4, CONNECT),
    AE_2(STA_5, SEND),
    AE_3(STA_6, ISSUE),
    AE_4(STA_1, ISSUE, CLOSE),
    AE_5(STA_2, START_ARTIM),
    AE_6(STA_3, STOP_ARTIM, ISSUE),
    /** The other half of AE-6: the service provider does not accept the request. */
    AE_6_OTHERWISE(STA_13, STOP_ARTIM, SEND_REJECTION, START_ARTIM),
    AE_7(STA_6, SEND),
    AE_8(STA_13, SEND, START_ARTIM),

    DT_1(STA_6, SEND),
    DT_2(STA_6, ISSUE),

    AR_1(STA_7, SEND),
    AR_2(STA_8, ISSUE),
    AR_3(STA_1, ISSUE, CLOSE),
    AR_4(STA_13, SEND, START_ARTIM),
    AR_5(STA_1, STOP_ARTIM),
    AR_6(STA_7, ISSUE),
    AR_7(STA_8, SEND),
    /** Release collision, seen by the requestor of the association. */
    AR_8(STA_9, ISSUE),
    /** The other half of AR-8: seen by its acceptor. */
    AR_8_ACCEPTOR(STA_10, ISSUE),
    AR_9(STA_11, SEND),
    AR_10(STA_12, ISSUE),

    AA_1(STA_13, SEND_ABORT_OF_USER, START_ARTIM),
    AA_2(STA_1, STOP_ARTIM, CLOSE),
    AA_3(STA_1, ISSUE, CLOSE),
    AA_4(STA_1, ISSUE_P_ABORT),
    AA_5(STA_1, STOP_ARTIM),
    AA_6(STA_13),
    AA_7(STA_13, SEND_ABORT_OF_PROVIDER),
    AA_8(STA_13, SEND_ABORT_OF_PROVIDER, ISSUE_P_ABORT, START_ARTIM);
    // spotless:on

    private final State next;
    private final List<Step> steps;

    Action(State next, Step... steps) {
        this.next = next;
        this.steps = List.of(steps);
    }

    State next() {
        return next;
    }

    List<Step> steps() {
        return steps;
    }
}
