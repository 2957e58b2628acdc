package dev.isoline.worklist;

import dev.isoline.dicom.Tag;
import java.util.Map;
import java.util.Set;

/**
 * What a worklist item may carry, and so what a query may match on (PS3.4 table K.6-1 and "all
 * other attributes" of its modules). Keys outside are returned empty and match everything, and the
 * responses say so by status FF01.
 */
final class CarriedAttributes {

    /** Stands for the item itself where a sequence is asked for. */
    static final int ITEM = 0;

    private static final Set<Integer> CODE =
            Set.of(Tag.CodeValue, Tag.CodingSchemeDesignator, Tag.CodeMeaning);
    private static final Set<Integer> AUTHORITY =
            Set.of(Tag.LocalNamespaceEntityID, Tag.UniversalEntityID, Tag.UniversalEntityIDType);

    // spotless:off
    private static final Map<Integer, Set<Integer>> BY_SEQUENCE = Map.ofEntries(
            Map.entry(Tag.ScheduledProcedureStepSequence, Set.of(
                    Tag.ScheduledStationAETitle, Tag.ScheduledProcedureStepStartDate, Tag.ScheduledProcedureStepStartTime,
                    Tag.ScheduledProcedureStepEndDate, Tag.ScheduledProcedureStepEndTime, Tag.Modality,
                    Tag.ScheduledPerformingPhysicianName, Tag.ScheduledProcedureStepDescription, Tag.ScheduledProtocolCodeSequence,
                    Tag.ScheduledProcedureStepID, Tag.ScheduledStationName, Tag.ScheduledProcedureStepLocation,
                    Tag.ScheduledProcedureStepStatus, Tag.CommentsOnTheScheduledProcedureStep)),
            Map.entry(ITEM, Set.of(
                    Tag.ScheduledProcedureStepSequence,
                    Tag.RequestedProcedureID, Tag.RequestedProcedureDescription, Tag.RequestedProcedureCodeSequence, Tag.StudyInstanceUID,
                    Tag.ReferencedStudySequence, Tag.RequestedProcedurePriority, Tag.PatientTransportArrangements,
                    Tag.ReasonForTheRequestedProcedure, Tag.ReasonForRequestedProcedureCodeSequence, Tag.RequestedProcedureComments,
                    Tag.AccessionNumber, Tag.IssuerOfAccessionNumberSequence, Tag.ReferringPhysicianName, Tag.RequestingPhysician,
                    Tag.RequestingService, Tag.IssueDateOfImagingServiceRequest, Tag.IssueTimeOfImagingServiceRequest,
                    Tag.PlacerOrderNumberImagingServiceRequest, Tag.FillerOrderNumberImagingServiceRequest,
                    Tag.OrderPlacerIdentifierSequence, Tag.OrderFillerIdentifierSequence,
                    Tag.AdmissionID, Tag.IssuerOfAdmissionIDSequence, Tag.CurrentPatientLocation,
                    Tag.PatientName, Tag.PatientID, Tag.IssuerOfPatientID, Tag.IssuerOfPatientIDQualifiersSequence,
                    Tag.OtherPatientIDsSequence, Tag.ReferencedPatientSequence, Tag.PatientBirthDate, Tag.PatientSex,
                    Tag.ConfidentialityConstraintOnPatientDataDescription, Tag.PatientState, Tag.PregnancyStatus,
                    Tag.PatientWeight, Tag.MedicalAlerts, Tag.SpecialNeeds, Tag.Allergies)),
            Map.entry(Tag.OtherPatientIDsSequence, Set.of(
                    Tag.PatientID, Tag.IssuerOfPatientID, Tag.TypeOfPatientID, Tag.IssuerOfPatientIDQualifiersSequence)),
            Map.entry(Tag.ScheduledProtocolCodeSequence, CODE),
            Map.entry(Tag.RequestedProcedureCodeSequence, CODE),
            Map.entry(Tag.ReasonForRequestedProcedureCodeSequence, CODE),
            Map.entry(Tag.ReferencedStudySequence, Set.of(Tag.ReferencedSOPClassUID, Tag.ReferencedSOPInstanceUID)),
            Map.entry(Tag.ReferencedPatientSequence, Set.of(Tag.ReferencedSOPClassUID, Tag.ReferencedSOPInstanceUID)),
            Map.entry(Tag.IssuerOfAccessionNumberSequence, AUTHORITY),
            Map.entry(Tag.IssuerOfAdmissionIDSequence, AUTHORITY),
            Map.entry(Tag.IssuerOfPatientIDQualifiersSequence, AUTHORITY),
            Map.entry(Tag.OrderPlacerIdentifierSequence, AUTHORITY),
            Map.entry(Tag.OrderFillerIdentifierSequence, AUTHORITY));
    // spotless:on

    private CarriedAttributes() {}

    /**
     * @param sequence the sequence the attribute stands in, or {@link #ITEM}
     */
    static boolean has(int sequence, int tag) {
        return BY_SEQUENCE.getOrDefault(sequence, Set.of()).contains(tag);
    }

    /** Every sequence and what its items may hold, for those who compare it with a document. */
    static Map<Integer, Set<Integer>> all() {
        return BY_SEQUENCE;
    }
}
