package dev.isoline.conformance.validator;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** All reference implementations behind one question: is this file right? */
public final class Judges {

    private final Hl7v2Judge hl7v2 = new Hl7v2Judge();
    private final DicomJudge dicom = new DicomJudge();
    private final WaveformReader waveforms = new WaveformReader();
    private final EcgJudge ecg = new EcgJudge();

    /**
     * @param name how the verdicts call the file
     */
    public List<Verdict> judge(String name, Path file) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        return switch (ContentKind.of(bytes)) {
            case HL7V2 -> List.of(hl7v2.judge(name, unframed(bytes)));
            case FHIR ->
                    List.of(FhirJudge.one().judge(name, new String(bytes, StandardCharsets.UTF_8)));
            case DICOM -> dicom(name, file);
            case UNKNOWN ->
                    List.of(
                            Verdict.of(
                                    name,
                                    "content",
                                    List.of(
                                            Finding.error(
                                                    "",
                                                    "is neither HL7 v2, FHIR JSON nor DICOM"))));
        };
    }

    /** pydicom has samples to read only in a waveform. */
    private List<Verdict> dicom(String name, Path file) {
        var verdicts = new ArrayList<>(List.of(dicom.judge(name, file)));
        if (DicomKind.isWaveform(file)) {
            verdicts.add(waveforms.judge(name, file));
            ecg.judge(name, file).ifPresent(verdicts::add);
        }
        return verdicts;
    }

    /** Without MLLP's start and end (HL7 v2 App. C), should the file hold a whole frame. */
    private static byte[] unframed(byte[] bytes) {
        String text = new String(bytes, StandardCharsets.ISO_8859_1);
        return text.replace("\u000b", "")
                .replace("\u001c", "")
                .getBytes(StandardCharsets.ISO_8859_1);
    }
}
