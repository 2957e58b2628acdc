package dev.isoline.dicom;

/**
 * VR of the elements {@link Tag} names, compiled in: who writes them does not wait for {@link
 * Dictionary} to read its table. An element missing here is found there.
 */
final class TagVr {

    private TagVr() {}

    // spotless:off
    /** The VR, or null where this class does not know the tag. */
    static Vr of(int tag) {
        return switch (tag) {
            case Tag.SourceApplicationEntityTitle, Tag.ScheduledStationAETitle -> Vr.AE;
            case Tag.PatientAge -> Vr.AS;
            case Tag.SpecificCharacterSet, Tag.QueryRetrieveLevel, Tag.Modality, Tag.ConversionType,
                    Tag.TypeOfPatientID, Tag.PatientSex, Tag.SynchronizationTrigger, Tag.AcquisitionTimeSynchronized,
                    Tag.TimeDistributionProtocol, Tag.Laterality, Tag.BurnedInAnnotation, Tag.WaveformOriginality,
                    Tag.ChannelStatus, Tag.ScheduledProcedureStepStatus, Tag.UniversalEntityIDType, Tag.ValueType,
                    Tag.TemporalRangeType, Tag.VerificationFlag, Tag.WaveformSampleInterpretation -> Vr.CS;
            case Tag.InstanceCreationDate, Tag.StudyDate, Tag.SeriesDate, Tag.ContentDate, Tag.PatientBirthDate,
                    Tag.ScheduledProcedureStepStartDate, Tag.ScheduledProcedureStepEndDate,
                    Tag.IssueDateOfImagingServiceRequest, Tag.Date -> Vr.DA;
            case Tag.PatientSize, Tag.PatientWeight, Tag.MultiplexGroupTimeOffset, Tag.TriggerTimeOffset,
                    Tag.SamplingFrequency, Tag.ChannelSensitivity, Tag.ChannelSensitivityCorrectionFactor,
                    Tag.ChannelBaseline, Tag.ChannelTimeSkew, Tag.ChannelSampleSkew, Tag.ChannelOffset,
                    Tag.FilterLowFrequency, Tag.FilterHighFrequency, Tag.NotchFilterFrequency,
                    Tag.NotchFilterBandwidth, Tag.ReferencedTimeOffsets, Tag.NumericValue -> Vr.DS;
            case Tag.AcquisitionDateTime, Tag.DateTime, Tag.ReferencedDateTime -> Vr.DT;
            case Tag.SeriesNumber, Tag.InstanceNumber, Tag.WaveformChannelNumber -> Vr.IS;
            case Tag.Manufacturer, Tag.InstitutionName, Tag.CodeMeaning, Tag.StudyDescription, Tag.SeriesDescription,
                    Tag.InstitutionalDepartmentName, Tag.ManufacturerModelName, Tag.PatientID, Tag.IssuerOfPatientID,
                    Tag.OtherPatientIDs, Tag.PatientAddress, Tag.MedicalAlerts, Tag.Allergies,
                    Tag.DeviceSerialNumber, Tag.SoftwareVersions, Tag.NTPSourceAddress, Tag.ReasonForStudy,
                    Tag.RequestingService, Tag.RequestedProcedureDescription, Tag.RequestedContrastAgent,
                    Tag.AdmissionID, Tag.SpecialNeeds, Tag.CurrentPatientLocation, Tag.PatientInstitutionResidence,
                    Tag.PatientState, Tag.ChannelDerivationDescription, Tag.ScheduledProcedureStepDescription,
                    Tag.PreMedication, Tag.ReasonForTheRequestedProcedure, Tag.PatientTransportArrangements,
                    Tag.PlacerOrderNumberImagingServiceRequest, Tag.FillerOrderNumberImagingServiceRequest,
                    Tag.ConfidentialityConstraintOnPatientDataDescription, Tag.MIMETypeOfEncapsulatedDocument,
                    Tag.ListOfMIMETypes -> Vr.LO;
            case Tag.AdditionalPatientHistory, Tag.PatientComments, Tag.ImageComments, Tag.VisitComments,
                    Tag.CommentsOnTheScheduledProcedureStep, Tag.RequestedProcedureComments,
                    Tag.ImagingServiceRequestComments, Tag.BarcodeValue -> Vr.LT;
            case Tag.FileMetaInformationVersion, Tag.EncapsulatedDocument -> Vr.OB;
            case Tag.ChannelMinimumValue, Tag.ChannelMaximumValue, Tag.WaveformPaddingValue, Tag.WaveformData,
                    Tag.PixelData -> Vr.OW;
            case Tag.ReferringPhysicianName, Tag.PhysiciansOfRecord, Tag.PerformingPhysicianName,
                    Tag.NameOfPhysiciansReadingStudy, Tag.OperatorsName, Tag.PatientName, Tag.RequestingPhysician,
                    Tag.ScheduledPerformingPhysicianName, Tag.PersonName -> Vr.PN;
            case Tag.ImplementationVersionName, Tag.AccessionNumber, Tag.CodeValue, Tag.CodingSchemeDesignator,
                    Tag.CodingSchemeVersion, Tag.TimezoneOffsetFromUTC, Tag.StationName, Tag.EthnicGroup,
                    Tag.TimeSource, Tag.StudyID, Tag.MultiplexGroupLabel, Tag.ChannelLabel,
                    Tag.ScheduledProcedureStepID, Tag.ScheduledStationName, Tag.ScheduledProcedureStepLocation,
                    Tag.RequestedProcedureID, Tag.RequestedProcedurePriority -> Vr.SH;
            case Tag.IssuerOfAccessionNumberSequence, Tag.ProcedureCodeSequence, Tag.ReferencedStudySequence,
                    Tag.ReferencedPatientSequence, Tag.ReferencedSOPSequence,
                    Tag.IssuerOfPatientIDQualifiersSequence, Tag.PatientPrimaryLanguageCodeSequence,
                    Tag.OtherPatientIDsSequence, Tag.ContributingEquipmentSequence,
                    Tag.RequestedProcedureCodeSequence, Tag.IssuerOfAdmissionIDSequence,
                    Tag.PertinentDocumentsSequence, Tag.ChannelDefinitionSequence, Tag.ChannelSourceSequence,
                    Tag.ChannelSourceModifiersSequence, Tag.SourceWaveformSequence,
                    Tag.ChannelSensitivityUnitsSequence, Tag.ScheduledProtocolCodeSequence,
                    Tag.OrderPlacerIdentifierSequence, Tag.OrderFillerIdentifierSequence,
                    Tag.ScheduledProcedureStepSequence, Tag.RequestAttributesSequence,
                    Tag.AcquisitionContextSequence, Tag.MeasurementUnitsCodeSequence,
                    Tag.ReasonForRequestedProcedureCodeSequence, Tag.ConceptNameCodeSequence,
                    Tag.ConceptCodeSequence, Tag.PurposeOfReferenceCodeSequence, Tag.ModifierCodeSequence,
                    Tag.WaveformAnnotationSequence, Tag.SourceInstanceSequence, Tag.WaveformSequence -> Vr.SQ;
            case Tag.InstitutionAddress, Tag.DocumentTitle, Tag.UnformattedTextValue -> Vr.ST;
            case Tag.InstanceCreationTime, Tag.StudyTime, Tag.SeriesTime, Tag.ContentTime, Tag.PatientBirthTime,
                    Tag.ScheduledProcedureStepStartTime, Tag.ScheduledProcedureStepEndTime,
                    Tag.IssueTimeOfImagingServiceRequest, Tag.Time -> Vr.TM;
            case Tag.MediaStorageSOPClassUID, Tag.MediaStorageSOPInstanceUID, Tag.TransferSyntaxUID,
                    Tag.ImplementationClassUID, Tag.SOPClassUID, Tag.SOPInstanceUID, Tag.ReferencedSOPClassUID,
                    Tag.ReferencedSOPInstanceUID, Tag.StudyInstanceUID, Tag.SeriesInstanceUID,
                    Tag.FrameOfReferenceUID, Tag.SynchronizationFrameOfReferenceUID, Tag.MultiplexGroupUID,
                    Tag.UID -> Vr.UI;
            case Tag.FileMetaInformationGroupLength, Tag.TriggerSamplePosition, Tag.NumberOfWaveformSamples,
                    Tag.ReferencedSamplePositions, Tag.EncapsulatedDocumentLength -> Vr.UL;
            case Tag.PregnancyStatus, Tag.NumberOfWaveformChannels, Tag.WaveformBitsStored,
                    Tag.ReferencedWaveformChannels, Tag.AnnotationGroupNumber, Tag.WaveformBitsAllocated -> Vr.US;
            case Tag.LocalNamespaceEntityID, Tag.UniversalEntityID, Tag.TextValue -> Vr.UT;
            default -> null;
        };
    }
    // spotless:on
}
