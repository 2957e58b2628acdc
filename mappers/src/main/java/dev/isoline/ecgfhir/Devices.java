package dev.isoline.ecgfhir;

import dev.isoline.fhir.Systems;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.Device.DeviceNameType;

/** The program that measured and the recorder that recorded. */
final class Devices {

    private Devices() {}

    static Device software(ReportContext context) {
        var device = new Device();
        device.setId(new ReportIds(context).software());
        device.addIdentifier(ReportIds.identifier(device.getId()));
        device.addDeviceName()
                .setName("Isoline ambulatory ECG analysis")
                .setType(DeviceNameType.USERFRIENDLYNAME);
        device.setType(new CodeableConcept().setText("ECG analysis software"));
        device.addVersion().setValue(context.software());
        return device;
    }

    /** SNOMED CT 86184003 as in the Device example of HL7 FHIR R4. */
    static Device recorder(ReportContext context) {
        var device = new Device();
        device.setId(new ReportIds(context).recorder());
        device.addIdentifier(ReportIds.identifier(device.getId()));
        device.addDeviceName()
                .setName(context.recording().equipment())
                .setType(DeviceNameType.OTHER);
        device.setType(
                new CodeableConcept(new Coding(Systems.SNOMED_CT, "86184003", null))
                        .setText("Ambulatory ECG recorder"));
        return device;
    }
}
