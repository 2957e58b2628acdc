package dev.isoline.ecgfhir;

import dev.isoline.ecg.summary.Summary;
import dev.isoline.fhir.BusinessIdentifier;
import dev.isoline.fhir.Systems;
import dev.isoline.fhir.UtcTime;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DiagnosticReport;
import org.hl7.fhir.r4.model.DiagnosticReport.DiagnosticReportStatus;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Period;

/** The report's frame; its results are references added by {@link ReportBundle}. */
final class SummaryToDiagnosticReport {

    private SummaryToDiagnosticReport() {}

    static DiagnosticReport map(Summary summary, ReportContext context, Optional<Period> recorded) {
        var ids = new ReportIds(context);
        var report = new DiagnosticReport();
        report.setId(ids.report());
        report.addIdentifier(ReportIds.identifier(report.getId()));
        context.order().getIdentifier().stream()
                .filter(i -> isOrderNumber(i))
                .forEach(i -> report.addIdentifier(i.copy()));
        report.addBasedOn(ids.order());
        report.setStatus(DiagnosticReportStatus.PRELIMINARY);
        report.addCategory(category(Systems.DIAGNOSTIC_SERVICE, "EC"));
        report.addCategory(category(Systems.LOINC, "LP29708-2"));
        report.setCode(study());
        report.setSubject(ids.subject());
        recorded.ifPresent(report::setEffective);
        report.setIssuedElement(UtcTime.instant(context.issued()));
        report.setConclusion(Conclusion.of(summary, context.software()));
        return report;
    }

    private static boolean isOrderNumber(Identifier identifier) {
        return BusinessIdentifier.hasType(identifier, "PLAC")
                || BusinessIdentifier.hasType(identifier, "FILL");
    }

    private static CodeableConcept category(String system, String code) {
        return new CodeableConcept(new Coding(system, code, null));
    }

    /** LOINC 18754-2 as expanded by the HL7 terminology server (LOINC 2.81). */
    private static CodeableConcept study() {
        String name = "Ambulatory cardiac rhythm monitor (Holter) study";
        return new CodeableConcept(new Coding(Systems.LOINC, "18754-2", name)).setText(name);
    }
}
