package dev.isoline.worklist;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Tag;
import java.io.UncheckedIOException;
import java.util.List;

/** A worklist item of an invented patient, in Lisbon's winter, as the ledger keeps it. */
final class MadeItem {

    static final String STUDY = "2.999.1.1";

    private MadeItem() {}

    static DataSet of(String name) {
        return with(
                new DataSet()
                        .putEmpty(Tag.AdmissionID)
                        .putItems(Tag.ScheduledProcedureStepSequence, List.of(step()))
                        .putItems(
                                Tag.RequestedProcedureCodeSequence,
                                List.of(code("18754-2", "LN", "Holter study"))),
                Tag.PatientName,
                name,
                Tag.PatientID,
                "4711",
                Tag.PatientBirthDate,
                "19580203",
                Tag.PatientWeight,
                "71.5",
                Tag.AccessionNumber,
                "A1000",
                Tag.RequestedProcedureID,
                "A1000",
                Tag.StudyInstanceUID,
                STUDY,
                Tag.IssueDateOfImagingServiceRequest,
                "20261103",
                Tag.IssueTimeOfImagingServiceRequest,
                "101000",
                Tag.TimezoneOffsetFromUTC,
                "+0000");
    }

    private static DataSet step() {
        return with(
                new DataSet().putEmpty(Tag.ScheduledStationAETitle),
                Tag.ScheduledProcedureStepStartDate,
                "20261104",
                Tag.ScheduledProcedureStepStartTime,
                "090000",
                Tag.ScheduledProcedureStepID,
                "A1000",
                Tag.ScheduledProcedureStepDescription,
                "Ambulatory ECG, 14 d",
                Tag.Modality,
                "ECG");
    }

    static DataSet code(String value, String scheme, String meaning) {
        return with(
                new DataSet(),
                Tag.CodeValue,
                value,
                Tag.CodingSchemeDesignator,
                scheme,
                Tag.CodeMeaning,
                meaning);
    }

    /** The data set with texts put into it: tag, text, tag, text. */
    static DataSet with(DataSet dataSet, Object... tagsAndTexts) {
        try {
            for (int i = 0; i < tagsAndTexts.length; i += 2) {
                String[] values = ((String) tagsAndTexts[i + 1]).split("\\\\");
                dataSet.putText((int) tagsAndTexts[i], values);
            }
            return dataSet;
        } catch (DicomException e) {
            throw new UncheckedIOException(e);
        }
    }
}
