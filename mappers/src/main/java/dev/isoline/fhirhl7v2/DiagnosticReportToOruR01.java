package dev.isoline.fhirhl7v2;

import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.model.v251.datatype.ED;
import ca.uhn.hl7v2.model.v251.group.ORU_R01_ORDER_OBSERVATION;
import ca.uhn.hl7v2.model.v251.message.ORU_R01;
import dev.isoline.hl7v2.Er7Writer;
import java.util.Base64;
import java.util.Set;
import org.hl7.fhir.r4.model.Attachment;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DiagnosticReport;
import org.hl7.fhir.r4.model.DiagnosticReport.DiagnosticReportStatus;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;

/**
 * A result in FHIR R4 to ORU^R01 (HL7 v2.5.1 ch. 7.3.1). Rows, and what is left out:
 * docs/mappings/report-to-oru.md.
 */
public final class DiagnosticReportToOruR01 {

    private static final String PRELIMINARY =
            "Preliminary result: computed by a program, not yet confirmed by a clinician.";
    private static final Set<DiagnosticReportStatus> CONFIRMED =
            Set.of(
                    DiagnosticReportStatus.FINAL,
                    DiagnosticReportStatus.AMENDED,
                    DiagnosticReportStatus.CORRECTED,
                    DiagnosticReportStatus.APPENDED);

    private DiagnosticReportToOruR01() {}

    /**
     * @param reportBundle holds one DiagnosticReport, its ServiceRequest and Patient and the
     *     Observations it lists; the requester when it is known
     * @return the message in UTF-8, every segment ended by CR
     */
    public static byte[] map(Bundle reportBundle, MessageContext context) {
        try {
            return Er7Writer.write(message(new ReportBundle(reportBundle), context));
        } catch (HL7Exception e) {
            throw new IllegalArgumentException("the report does not fit ORU^R01", e);
        }
    }

    private static ORU_R01 message(ReportBundle bundle, MessageContext context)
            throws HL7Exception {
        var report = required(bundle, DiagnosticReport.class);
        var order = required(bundle, ServiceRequest.class);
        var types = new DataTypes(context);
        var message = new ORU_R01();
        Msh.fill(message.getMSH(), "ORU", "R01", context);
        var result = message.getPATIENT_RESULT();
        PatientToPid.map(required(bundle, Patient.class), result.getPATIENT().getPID(), types);
        var visit = result.getPATIENT().getVISIT().getPV1();
        visit.getPv11_SetIDPV1().setValue("1");
        visit.getPv12_PatientClass().setValue("O"); // table 0004: ambulatory monitoring
        var observations = result.getORDER_OBSERVATION();
        var head = new DiagnosticReportToObr(bundle, types);
        head.orc(order, report, observations.getORC());
        head.obr(order, report, observations.getOBR());
        notes(report, observations);
        body(bundle, report, observations);
        return message;
    }

    private static void notes(DiagnosticReport report, ORU_R01_ORDER_OBSERVATION to)
            throws HL7Exception {
        if (!CONFIRMED.contains(report.getStatus())) {
            Nte.add(to, PRELIMINARY);
        }
        if (report.hasConclusion()) {
            Nte.add(to, report.getConclusion());
        }
    }

    private static void body(
            ReportBundle bundle, DiagnosticReport report, ORU_R01_ORDER_OBSERVATION to)
            throws HL7Exception {
        var values = new ObservationToObx(to);
        for (var observation : bundle.observations(report)) {
            values.map(observation);
        }
        for (Attachment document : report.getPresentedForm()) {
            if (document.hasData() && "application/pdf".equals(document.getContentType())) {
                pdf(document, report, values);
            }
        }
    }

    /** ED as HL7 v2.6 words it, which is what receivers of documents expect (common practice). */
    private static void pdf(Attachment document, DiagnosticReport report, ObservationToObx values)
            throws HL7Exception {
        var obx = values.next();
        var ed = new ED(obx.getMessage());
        ed.getEd2_TypeOfData().setValue("application");
        ed.getEd3_DataSubtype().setValue("pdf");
        ed.getEd4_Encoding().setValue("Base64");
        ed.getEd5_Data().setValue(Base64.getEncoder().encodeToString(document.getData()));
        ObxValue.set("ED", ed, obx);
        values.document(obx, report.getCode(), Tables.report(report.getStatus()).result());
    }

    private static <T extends Resource> T required(ReportBundle bundle, Class<T> type) {
        return bundle.first(type)
                .orElseThrow(
                        () ->
                                new IllegalArgumentException(
                                        "the report bundle holds no " + type.getSimpleName()));
    }
}
