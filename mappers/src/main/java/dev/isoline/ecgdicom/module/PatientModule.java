package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;

/** Patient Module, PS3.3 C.7.1.1. */
public final class PatientModule {

    private PatientModule() {}

    public static DataSet of(CompositeObject object) {
        var patient = object.order().patient();
        var issuer = patient.id().authority();
        return new ModuleWriter("Patient (PS3.3 C.7.1.1)")
                .type2(Tag.PatientName, patient.name())
                .type2(Tag.PatientID, patient.id().value())
                .type3(Tag.IssuerOfPatientID, issuer.name())
                .type3(Tag.IssuerOfPatientIDQualifiersSequence, CodeItems.authority(issuer))
                .type2(Tag.PatientBirthDate, patient.birthDate())
                .type2(Tag.PatientSex, patient.sex())
                .dataSet();
    }
}
