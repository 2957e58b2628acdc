package dev.isoline.fhirhl7v2;

import ca.uhn.hl7v2.model.DataTypeException;
import ca.uhn.hl7v2.model.v251.segment.OBR;
import ca.uhn.hl7v2.model.v251.segment.ORC;
import org.hl7.fhir.r4.model.DiagnosticReport;
import org.hl7.fhir.r4.model.Practitioner;
import org.hl7.fhir.r4.model.ServiceRequest;

/**
 * DiagnosticReport (FHIR R4) to ORC and OBR (HL7 v2.5.1 ch. 4.5.1 and 7.4.1). Rows:
 * docs/mappings/report-to-oru.md.
 */
final class DiagnosticReportToObr {

    private final ReportBundle bundle;
    private final DataTypes types;

    DiagnosticReportToObr(ReportBundle bundle, DataTypes types) {
        this.bundle = bundle;
        this.types = types;
    }

    void orc(ServiceRequest order, DiagnosticReport report, ORC orc) throws DataTypeException {
        orc.getOrc1_OrderControl().setValue("RE");
        OrderNumbers.placer(order, orc.getOrc2_PlacerOrderNumber(), types);
        OrderNumbers.filler(order, orc.getOrc3_FillerOrderNumber(), types);
        orc.getOrc5_OrderStatus().setValue(Tables.report(report.getStatus()).order());
        var requester = bundle.find(order.getRequester(), Practitioner.class);
        if (requester.isPresent()) {
            types.xcn(requester.get(), orc.getOrc12_OrderingProvider(0));
        }
    }

    void obr(ServiceRequest order, DiagnosticReport report, OBR obr) throws DataTypeException {
        obr.getObr1_SetIDOBR().setValue("1");
        OrderNumbers.placer(order, obr.getObr2_PlacerOrderNumber(), types);
        OrderNumbers.filler(order, obr.getObr3_FillerOrderNumber(), types);
        DataTypes.ce(report.getCode(), obr.getObr4_UniversalServiceIdentifier());
        period(report, obr);
        var requester = bundle.find(order.getRequester(), Practitioner.class);
        if (requester.isPresent()) {
            types.xcn(requester.get(), obr.getObr16_OrderingProvider(0));
        }
        DateTimeToTs.map(report.getIssuedElement(), obr.getObr22_ResultsRptStatusChngDateTime());
        obr.getObr24_DiagnosticServSectID().setValue("EC"); // table 0074: electrocardiac
        obr.getObr25_ResultStatus().setValue(Tables.report(report.getStatus()).result());
    }

    private static void period(DiagnosticReport report, OBR obr) throws DataTypeException {
        if (report.hasEffectivePeriod()) {
            var period = report.getEffectivePeriod();
            DateTimeToTs.map(period.getStartElement(), obr.getObr7_ObservationDateTime());
            DateTimeToTs.map(period.getEndElement(), obr.getObr8_ObservationEndDateTime());
        } else if (report.hasEffectiveDateTimeType()) {
            DateTimeToTs.map(report.getEffectiveDateTimeType(), obr.getObr7_ObservationDateTime());
        }
    }
}
