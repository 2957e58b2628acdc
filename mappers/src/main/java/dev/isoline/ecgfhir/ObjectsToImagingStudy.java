package dev.isoline.ecgfhir;

import dev.isoline.fhir.BusinessIdentifier;
import dev.isoline.fhir.Systems;
import dev.isoline.fhir.UtcTime;
import java.time.Instant;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.ImagingStudy;
import org.hl7.fhir.r4.model.ImagingStudy.ImagingStudySeriesComponent;
import org.hl7.fhir.r4.model.ImagingStudy.ImagingStudyStatus;

/** The DICOM objects of the recording as ImagingStudy (FHIR R4 imagingstudy.html). */
final class ObjectsToImagingStudy {

    private static final Coding ECG = new Coding(Systems.DICOM, "ECG", "Electrocardiography");

    private final ReportContext context;

    private ObjectsToImagingStudy(ReportContext context) {
        this.context = context;
    }

    /** One per Study Instance UID; objects of one order are normally in one study. */
    static List<ImagingStudy> map(ReportContext context, List<WaveformObject> objects) {
        var mapper = new ObjectsToImagingStudy(context);
        Map<String, List<WaveformObject>> studies =
                objects.stream()
                        .collect(
                                Collectors.groupingBy(
                                        WaveformObject::studyUid,
                                        LinkedHashMap::new,
                                        Collectors.toList()));
        return studies.values().stream().map(mapper::study).toList();
    }

    private ImagingStudy study(List<WaveformObject> objects) {
        var ids = new ReportIds(context);
        String uid = objects.get(0).studyUid();
        var study = new ImagingStudy();
        study.setId(ids.of("ImagingStudy", uid));
        study.addIdentifier(uid(Systems.DICOM_UID, uid));
        context.order().getIdentifier().stream()
                .filter(i -> BusinessIdentifier.hasType(i, "ACSN"))
                .forEach(i -> study.addIdentifier(i.copy()));
        study.setStatus(ImagingStudyStatus.AVAILABLE);
        study.addModality(ECG.copy());
        study.setSubject(ids.subject());
        started(objects).map(UtcTime::dateTime).ifPresent(study::setStartedElement);
        study.addBasedOn(ids.order());
        objects.forEach(object -> addInstance(series(study, object), object));
        study.getSeries().forEach(s -> s.setNumberOfInstances(s.getInstance().size()));
        study.setNumberOfSeries(study.getSeries().size());
        study.setNumberOfInstances(objects.size());
        return study;
    }

    private static ImagingStudySeriesComponent series(ImagingStudy study, WaveformObject object) {
        return study.getSeries().stream()
                .filter(s -> s.getUid().equals(object.seriesUid()))
                .findFirst()
                .orElseGet(
                        () -> study.addSeries().setUid(object.seriesUid()).setModality(ECG.copy()));
    }

    private static void addInstance(ImagingStudySeriesComponent series, WaveformObject object) {
        series.addInstance()
                .setUid(object.sopInstanceUid())
                .setSopClass(new Coding().setSystem(Systems.URI).setCode(oid(object.sopClassUid())))
                .setNumber(object.number());
    }

    private static Optional<Instant> started(List<WaveformObject> objects) {
        return objects.stream()
                .map(WaveformObject::start)
                .flatMap(Optional::stream)
                .min(Comparator.naturalOrder());
    }

    private static Identifier uid(String system, String uid) {
        return new Identifier().setSystem(system).setValue(oid(uid));
    }

    private static String oid(String uid) {
        return "urn:oid:" + uid;
    }
}
