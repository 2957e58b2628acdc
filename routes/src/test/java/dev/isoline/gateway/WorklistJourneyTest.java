package dev.isoline.gateway;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.spi.AeTitle;
import dev.isoline.dicom.spi.FindRequest;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Pending;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.dicom.spi.Status;
import dev.isoline.ledger.AuditTable;
import dev.isoline.ledger.TimelineTable;
import dev.isoline.order.OrderState;
import dev.isoline.worklist.Worklist;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

/** docs/flows/05-worklist.md: what happens to an order, seen from the recorder station. */
class WorklistJourneyTest extends AssembledGateway {

    @Autowired private Worklist worklist;

    private final Clinic clinic = Clinic.patient();

    @Test
    void a_complete_hl7_v2_order_appears_with_its_numbers() throws Exception {
        mllp(clinic.order());
        DataSet item = item();
        var order = order(clinic.placer());
        assertThat(item.text(Tag.PatientName)).contains("Quillfeather^Ottoline");
        assertThat(item.text(Tag.AccessionNumber)).contains(order.accession());
        assertThat(item.text(Tag.PlacerOrderNumberImagingServiceRequest)).contains(clinic.placer());
        assertThat(item.text(Tag.FillerOrderNumberImagingServiceRequest)).contains(order.filler());
        DataSet step = item.item(Tag.ScheduledProcedureStepSequence).orElseThrow();
        assertThat(step.text(Tag.ScheduledProcedureStepStartDate)).contains("20261104");
        assertThat(step.text(Tag.ScheduledProcedureStepStartTime)).contains("090000");
        assertThat(step.text(Tag.ScheduledStationAETitle)).contains("RECORDER");
    }

    @Test
    void a_complete_fhir_order_appears() {
        fhir("sable-point", "POST", "", clinic.bundle());
        assertThat(item().contains(Tag.StudyInstanceUID)).isTrue();
    }

    @Test
    void an_order_on_hold_is_never_shown_and_appears_when_it_is_released() {
        mllp(clinic.orderWithoutInsurance());
        assertThat(order(clinic.placer()).state()).isEqualTo(OrderState.ON_HOLD);
        assertThat(items()).isEmpty();
        mllp(clinic.adt());
        assertThat(items()).hasSize(1);
    }

    @Test
    void a_cancelled_order_vanishes() {
        mllp(clinic.order());
        mllp(clinic.order("CA"));
        assertThat(order(clinic.placer()).state()).isEqualTo(OrderState.CANCELLED);
        assertThat(items()).isEmpty();
    }

    @Test
    void an_order_cancelled_by_fhir_vanishes() {
        fhir("sable-point", "POST", "", clinic.bundle());
        String id = order(clinic.placer()).id();
        var order = search(ServiceRequest.class, "_id=" + id).get(0);
        order.setStatus(ServiceRequestStatus.REVOKED);
        fhir("sable-point", "PUT", "/ServiceRequest/" + id, order);
        assertThat(items()).isEmpty();
    }

    @Test
    void a_name_changed_by_adt_changes_the_item() throws Exception {
        mllp(clinic.order());
        mllp(clinic.adt().replace("Quillfeather^Ottoline^^^^^L", "Quillfeather^Ottilie^^^^^L"));
        assertThat(item().text(Tag.PatientName)).contains("Quillfeather^Ottilie");
        assertThat(names("QUILLFEATHER^OTTILIE")).contains(clinic.mrn());
    }

    @Test
    void a_merge_shows_the_item_under_the_surviving_patient() throws Exception {
        var surviving = Clinic.patient();
        mllp(surviving.adt());
        mllp(clinic.order());
        mllp(surviving.merge(clinic));
        assertThat(items()).isEmpty();
        List<DataSet> found = find(keys(Tag.PatientID, surviving.mrn()));
        assertThat(found).hasSize(1);
        assertThat(found.get(0).text(Tag.PlacerOrderNumberImagingServiceRequest))
                .contains(clinic.placer());
    }

    @Test
    void a_name_changed_by_fhir_changes_the_item() throws Exception {
        mllp(clinic.order());
        String id = order(clinic.placer()).patientId();
        var patient = search(Patient.class, "_id=" + id).get(0);
        patient.getNameFirstRep().setFamily("Ångström");
        fhir("operator", "PUT", "/Patient/" + id, patient);
        assertThat(item().text(Tag.PatientName)).contains("Ångström^Ottoline");
        assertThat(names("angstrom*")).contains(clinic.mrn());
    }

    @Test
    void an_order_whose_recording_came_vanishes() {
        mllp(clinic.order());
        recording("?order=" + clinic.placer(), Edf.of(clinic).bytes());
        await("the recording", () -> order(clinic.placer()).state() != OrderState.READY);
        assertThat(items()).isEmpty();
    }

    @Test
    void an_order_dicom_cannot_carry_is_not_shown_and_its_timeline_says_why() {
        mllp(
                clinic.order()
                        .replace(
                                "Quillfeather^Ottoline^^^^^L", "Quill\\S\\feather^Ottoline^^^^^L"));
        assertThat(order(clinic.placer()).state()).isEqualTo(OrderState.READY);
        assertThat(items()).isEmpty();
        String id = order(clinic.placer()).id();
        List<TimelineTable.Entry> timeline = ledger.read(t -> t.timeline().of(id));
        assertThat(timeline)
                .anySatisfy(
                        entry -> {
                            assertThat(entry.event()).isEqualTo("NOT_ON_WORKLIST");
                            assertThat(entry.detail()).isEqualTo("Patient.name");
                        });
    }

    @Test
    void a_query_is_an_audit_event() {
        mllp(clinic.order());
        items();
        List<AuditTable.Event> audit = ledger.read(t -> t.audit().of("Worklist"));
        assertThat(audit)
                .anySatisfy(
                        event -> {
                            assertThat(event.actor()).isEqualTo("dicom:RECORDER");
                            assertThat(event.outcome()).isEqualTo("0000H, 1 sent");
                        });
    }

    private DataSet item() {
        assertThat(items()).hasSize(1);
        return items().get(0);
    }

    /** What is there for the patient. */
    private List<DataSet> items() {
        return find(keys(Tag.PatientID, clinic.mrn()));
    }

    private List<String> names(String key) {
        return find(keys(Tag.PatientName, key)).stream()
                .map(item -> text(item, Tag.PatientID))
                .toList();
    }

    private List<DataSet> find(DataSet keys) {
        var found = new ArrayList<DataSet>();
        var pending =
                new Pending() {
                    @Override
                    public boolean send(DataSet match, Status status) {
                        assertThat(status.isPending()).isTrue();
                        return found.add(match);
                    }

                    @Override
                    public boolean cancelled() {
                        return false;
                    }
                };
        try {
            var peer =
                    new Peer(
                            new AeTitle("RECORDER"),
                            new AeTitle("ISOLINE"),
                            InetAddress.getLoopbackAddress(),
                            "",
                            "",
                            Optional.empty());
            var request = new FindRequest(peer, SopClass.MODALITY_WORKLIST_FIND, keys);
            assertThat(worklist.find(request, pending)).isEqualTo(Status.SUCCESS);
            return found;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static DataSet keys(int tag, String value) {
        try {
            return new DataSet()
                    .putEmpty(Tag.PatientName)
                    .putEmpty(Tag.PatientID)
                    .putEmpty(Tag.AccessionNumber)
                    .putEmpty(Tag.StudyInstanceUID)
                    .putEmpty(Tag.PlacerOrderNumberImagingServiceRequest)
                    .putEmpty(Tag.FillerOrderNumberImagingServiceRequest)
                    .putEmpty(Tag.ScheduledProcedureStepSequence)
                    .putText(tag, value);
        } catch (DicomException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String text(DataSet item, int tag) {
        try {
            return item.text(tag).orElse("");
        } catch (DicomException e) {
            throw new UncheckedIOException(e);
        }
    }
}
