package dev.isoline.dicom;

import java.util.List;

/** Data sets for tests. */
public final class Samples {

    private Samples() {}

    /** One value of each kind, nested and private ones too. */
    public static DataSet everything() throws DicomException {
        var code =
                new DataSet()
                        .putText(Tag.CodeValue, "2:1")
                        .putText(Tag.CodingSchemeDesignator, "MDC");
        var channel =
                new DataSet()
                        .putText(Tag.ChannelLabel, "Löt 1")
                        .putItems(Tag.ChannelSourceSequence, List.of(code));
        return new DataSet()
                .putText(Tag.SpecificCharacterSet, CharacterSet.ISO_IR_192.term())
                .putText(Tag.SOPClassUID, "1.2.840.10008.5.1.4.1.1.9.1.3")
                .putText(Tag.SOPInstanceUID, Uid.of("everything"))
                .putText(Tag.PatientName, "Müller^Zoë")
                .putEmpty(Tag.PatientBirthDate)
                .putText(Tag.SoftwareVersions, "1.0", "", "b")
                .putText(Tag.UnformattedTextValue, " a\\b")
                .putInts(Tag.InstanceNumber, 12)
                .putInts(Tag.ReferencedWaveformChannels, 1, 0, 1, 65535)
                .putInts(Tag.ReferencedSamplePositions, 1, 4_294_967_295L)
                .putNumbers(Tag.ChannelSensitivity, 4.88281)
                .putItems(Tag.AcquisitionContextSequence, List.of())
                .putItems(Tag.ChannelDefinitionSequence, List.of(channel, new DataSet()))
                .putText(0x0029_0010, "TERN STREET")
                .putBytes(0x0029_1001, Vr.UN, new byte[] {1, 2, 3, 4})
                .putBytes(Tag.WaveformData, Vr.OW, new byte[] {0, -128, -1, 127});
    }
}
