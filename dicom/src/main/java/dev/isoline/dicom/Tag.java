package dev.isoline.dicom;

/** Data element tags by their keyword, PS3.6 chapter 6; {@link Dictionary} has their VR. */
public final class Tag {

    // spotless:off
    public static final int FileMetaInformationGroupLength = 0x0002_0000;
    public static final int FileMetaInformationVersion = 0x0002_0001;
    public static final int MediaStorageSOPClassUID = 0x0002_0002;
    public static final int MediaStorageSOPInstanceUID = 0x0002_0003;
    public static final int TransferSyntaxUID = 0x0002_0010;
    public static final int ImplementationClassUID = 0x0002_0012;
    public static final int ImplementationVersionName = 0x0002_0013;
    public static final int SourceApplicationEntityTitle = 0x0002_0016;
    public static final int SpecificCharacterSet = 0x0008_0005;
    public static final int InstanceCreationDate = 0x0008_0012;
    public static final int InstanceCreationTime = 0x0008_0013;
    public static final int SOPClassUID = 0x0008_0016;
    public static final int SOPInstanceUID = 0x0008_0018;
    public static final int StudyDate = 0x0008_0020;
    public static final int SeriesDate = 0x0008_0021;
    public static final int ContentDate = 0x0008_0023;
    public static final int AcquisitionDateTime = 0x0008_002A;
    public static final int StudyTime = 0x0008_0030;
    public static final int SeriesTime = 0x0008_0031;
    public static final int ContentTime = 0x0008_0033;
    public static final int AccessionNumber = 0x0008_0050;
    public static final int IssuerOfAccessionNumberSequence = 0x0008_0051;
    public static final int QueryRetrieveLevel = 0x0008_0052;
    public static final int Modality = 0x0008_0060;
    public static final int ConversionType = 0x0008_0064;
    public static final int Manufacturer = 0x0008_0070;
    public static final int InstitutionName = 0x0008_0080;
    public static final int InstitutionAddress = 0x0008_0081;
    public static final int ReferringPhysicianName = 0x0008_0090;
    public static final int CodeValue = 0x0008_0100;
    public static final int CodingSchemeDesignator = 0x0008_0102;
    public static final int CodingSchemeVersion = 0x0008_0103;
    public static final int CodeMeaning = 0x0008_0104;
    public static final int TimezoneOffsetFromUTC = 0x0008_0201;
    public static final int StationName = 0x0008_1010;
    public static final int StudyDescription = 0x0008_1030;
    public static final int ProcedureCodeSequence = 0x0008_1032;
    public static final int SeriesDescription = 0x0008_103E;
    public static final int InstitutionalDepartmentName = 0x0008_1040;
    public static final int PhysiciansOfRecord = 0x0008_1048;
    public static final int PerformingPhysicianName = 0x0008_1050;
    public static final int NameOfPhysiciansReadingStudy = 0x0008_1060;
    public static final int OperatorsName = 0x0008_1070;
    public static final int ManufacturerModelName = 0x0008_1090;
    public static final int ReferencedStudySequence = 0x0008_1110;
    public static final int ReferencedPatientSequence = 0x0008_1120;
    public static final int ReferencedSOPClassUID = 0x0008_1150;
    public static final int ReferencedSOPInstanceUID = 0x0008_1155;
    public static final int TransactionUID = 0x0008_1195;
    public static final int FailureReason = 0x0008_1197;
    public static final int FailedSOPSequence = 0x0008_1198;
    public static final int ReferencedSOPSequence = 0x0008_1199;
    public static final int PatientName = 0x0010_0010;
    public static final int PatientID = 0x0010_0020;
    public static final int IssuerOfPatientID = 0x0010_0021;
    public static final int TypeOfPatientID = 0x0010_0022;
    public static final int IssuerOfPatientIDQualifiersSequence = 0x0010_0024;
    public static final int PatientBirthDate = 0x0010_0030;
    public static final int PatientBirthTime = 0x0010_0032;
    public static final int PatientSex = 0x0010_0040;
    public static final int PatientPrimaryLanguageCodeSequence = 0x0010_0101;
    public static final int OtherPatientIDs = 0x0010_1000;
    public static final int OtherPatientIDsSequence = 0x0010_1002;
    public static final int PatientAge = 0x0010_1010;
    public static final int PatientSize = 0x0010_1020;
    public static final int PatientWeight = 0x0010_1030;
    public static final int PatientAddress = 0x0010_1040;
    public static final int MedicalAlerts = 0x0010_2000;
    public static final int Allergies = 0x0010_2110;
    public static final int EthnicGroup = 0x0010_2160;
    public static final int AdditionalPatientHistory = 0x0010_21B0;
    public static final int PregnancyStatus = 0x0010_21C0;
    public static final int PatientComments = 0x0010_4000;
    public static final int DeviceSerialNumber = 0x0018_1000;
    public static final int SoftwareVersions = 0x0018_1020;
    public static final int MultiplexGroupTimeOffset = 0x0018_1068;
    public static final int TriggerTimeOffset = 0x0018_1069;
    public static final int SynchronizationTrigger = 0x0018_106A;
    public static final int TriggerSamplePosition = 0x0018_106E;
    public static final int AcquisitionTimeSynchronized = 0x0018_1800;
    public static final int TimeSource = 0x0018_1801;
    public static final int TimeDistributionProtocol = 0x0018_1802;
    public static final int NTPSourceAddress = 0x0018_1803;
    public static final int ContributingEquipmentSequence = 0x0018_A001;
    public static final int StudyInstanceUID = 0x0020_000D;
    public static final int SeriesInstanceUID = 0x0020_000E;
    public static final int StudyID = 0x0020_0010;
    public static final int SeriesNumber = 0x0020_0011;
    public static final int InstanceNumber = 0x0020_0013;
    public static final int FrameOfReferenceUID = 0x0020_0052;
    public static final int Laterality = 0x0020_0060;
    public static final int SynchronizationFrameOfReferenceUID = 0x0020_0200;
    public static final int ImageComments = 0x0020_4000;
    public static final int BurnedInAnnotation = 0x0028_0301;
    public static final int ReasonForStudy = 0x0032_1030;
    public static final int RequestingPhysician = 0x0032_1032;
    public static final int RequestingService = 0x0032_1033;
    public static final int RequestedProcedureDescription = 0x0032_1060;
    public static final int RequestedProcedureCodeSequence = 0x0032_1064;
    public static final int RequestedContrastAgent = 0x0032_1070;
    public static final int AdmissionID = 0x0038_0010;
    public static final int IssuerOfAdmissionIDSequence = 0x0038_0014;
    public static final int SpecialNeeds = 0x0038_0050;
    public static final int PertinentDocumentsSequence = 0x0038_0100;
    public static final int CurrentPatientLocation = 0x0038_0300;
    public static final int PatientInstitutionResidence = 0x0038_0400;
    public static final int PatientState = 0x0038_0500;
    public static final int VisitComments = 0x0038_4000;
    public static final int WaveformOriginality = 0x003A_0004;
    public static final int NumberOfWaveformChannels = 0x003A_0005;
    public static final int NumberOfWaveformSamples = 0x003A_0010;
    public static final int SamplingFrequency = 0x003A_001A;
    public static final int MultiplexGroupLabel = 0x003A_0020;
    public static final int ChannelDefinitionSequence = 0x003A_0200;
    public static final int WaveformChannelNumber = 0x003A_0202;
    public static final int ChannelLabel = 0x003A_0203;
    public static final int ChannelStatus = 0x003A_0205;
    public static final int ChannelSourceSequence = 0x003A_0208;
    public static final int ChannelSourceModifiersSequence = 0x003A_0209;
    public static final int SourceWaveformSequence = 0x003A_020A;
    public static final int ChannelDerivationDescription = 0x003A_020C;
    public static final int ChannelSensitivity = 0x003A_0210;
    public static final int ChannelSensitivityUnitsSequence = 0x003A_0211;
    public static final int ChannelSensitivityCorrectionFactor = 0x003A_0212;
    public static final int ChannelBaseline = 0x003A_0213;
    public static final int ChannelTimeSkew = 0x003A_0214;
    public static final int ChannelSampleSkew = 0x003A_0215;
    public static final int ChannelOffset = 0x003A_0218;
    public static final int WaveformBitsStored = 0x003A_021A;
    public static final int FilterLowFrequency = 0x003A_0220;
    public static final int FilterHighFrequency = 0x003A_0221;
    public static final int NotchFilterFrequency = 0x003A_0222;
    public static final int NotchFilterBandwidth = 0x003A_0223;
    public static final int MultiplexGroupUID = 0x003A_0310;
    public static final int ScheduledStationAETitle = 0x0040_0001;
    public static final int ScheduledProcedureStepStartDate = 0x0040_0002;
    public static final int ScheduledProcedureStepStartTime = 0x0040_0003;
    public static final int ScheduledProcedureStepEndDate = 0x0040_0004;
    public static final int ScheduledProcedureStepEndTime = 0x0040_0005;
    public static final int ScheduledPerformingPhysicianName = 0x0040_0006;
    public static final int ScheduledProcedureStepDescription = 0x0040_0007;
    public static final int ScheduledProtocolCodeSequence = 0x0040_0008;
    public static final int ScheduledProcedureStepID = 0x0040_0009;
    public static final int ScheduledStationName = 0x0040_0010;
    public static final int ScheduledProcedureStepLocation = 0x0040_0011;
    public static final int PreMedication = 0x0040_0012;
    public static final int ScheduledProcedureStepStatus = 0x0040_0020;
    public static final int OrderPlacerIdentifierSequence = 0x0040_0026;
    public static final int OrderFillerIdentifierSequence = 0x0040_0027;
    public static final int LocalNamespaceEntityID = 0x0040_0031;
    public static final int UniversalEntityID = 0x0040_0032;
    public static final int UniversalEntityIDType = 0x0040_0033;
    public static final int ScheduledProcedureStepSequence = 0x0040_0100;
    public static final int RequestAttributesSequence = 0x0040_0275;
    public static final int CommentsOnTheScheduledProcedureStep = 0x0040_0400;
    public static final int AcquisitionContextSequence = 0x0040_0555;
    public static final int MeasurementUnitsCodeSequence = 0x0040_08EA;
    public static final int RequestedProcedureID = 0x0040_1001;
    public static final int ReasonForTheRequestedProcedure = 0x0040_1002;
    public static final int RequestedProcedurePriority = 0x0040_1003;
    public static final int PatientTransportArrangements = 0x0040_1004;
    public static final int ReasonForRequestedProcedureCodeSequence = 0x0040_100A;
    public static final int RequestedProcedureComments = 0x0040_1400;
    public static final int IssueDateOfImagingServiceRequest = 0x0040_2004;
    public static final int IssueTimeOfImagingServiceRequest = 0x0040_2005;
    public static final int PlacerOrderNumberImagingServiceRequest = 0x0040_2016;
    public static final int FillerOrderNumberImagingServiceRequest = 0x0040_2017;
    public static final int ImagingServiceRequestComments = 0x0040_2400;
    public static final int ConfidentialityConstraintOnPatientDataDescription = 0x0040_3001;
    public static final int ValueType = 0x0040_A040;
    public static final int ConceptNameCodeSequence = 0x0040_A043;
    public static final int ReferencedWaveformChannels = 0x0040_A0B0;
    public static final int DateTime = 0x0040_A120;
    public static final int Date = 0x0040_A121;
    public static final int Time = 0x0040_A122;
    public static final int PersonName = 0x0040_A123;
    public static final int UID = 0x0040_A124;
    public static final int TemporalRangeType = 0x0040_A130;
    public static final int ReferencedSamplePositions = 0x0040_A132;
    public static final int ReferencedTimeOffsets = 0x0040_A138;
    public static final int ReferencedDateTime = 0x0040_A13A;
    public static final int TextValue = 0x0040_A160;
    public static final int ConceptCodeSequence = 0x0040_A168;
    public static final int PurposeOfReferenceCodeSequence = 0x0040_A170;
    public static final int AnnotationGroupNumber = 0x0040_A180;
    public static final int ModifierCodeSequence = 0x0040_A195;
    public static final int NumericValue = 0x0040_A30A;
    public static final int VerificationFlag = 0x0040_A493;
    public static final int WaveformAnnotationSequence = 0x0040_B020;
    public static final int DocumentTitle = 0x0042_0010;
    public static final int EncapsulatedDocument = 0x0042_0011;
    public static final int MIMETypeOfEncapsulatedDocument = 0x0042_0012;
    public static final int SourceInstanceSequence = 0x0042_0013;
    public static final int ListOfMIMETypes = 0x0042_0014;
    public static final int EncapsulatedDocumentLength = 0x0042_0015;
    public static final int UnformattedTextValue = 0x0070_0006;
    public static final int BarcodeValue = 0x2200_0005;
    public static final int WaveformSequence = 0x5400_0100;
    public static final int ChannelMinimumValue = 0x5400_0110;
    public static final int ChannelMaximumValue = 0x5400_0112;
    public static final int WaveformBitsAllocated = 0x5400_1004;
    public static final int WaveformSampleInterpretation = 0x5400_1006;
    public static final int WaveformPaddingValue = 0x5400_100A;
    public static final int WaveformData = 0x5400_1010;
    public static final int PixelData = 0x7FE0_0010;
    // spotless:on

    private Tag() {}

    /** The tag as the standard prints it, such as {@code (5400,0100)}. */
    public static String format(int tag) {
        return String.format("(%04X,%04X)", tag >>> 16, tag & 0xFFFF);
    }

    /** Private elements have an odd group number, PS3.5 7.8. */
    static boolean isPrivate(int tag) {
        return (tag >>> 16 & 1) == 1;
    }

    /** Private creators reserve a block of elements, PS3.5 7.8.1. */
    static boolean isPrivateCreator(int tag) {
        return isPrivate(tag) && (tag & 0xFF00) == 0 && (tag & 0xFF) >= 0x10;
    }

    /** Group lengths outside groups 0000 and 0002 are retired, PS3.5 7.2. */
    static boolean isGroupLength(int tag) {
        return (tag & 0xFFFF) == 0;
    }
}
