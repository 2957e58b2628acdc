package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.ecgdicom.OrderContext.Code;
import dev.isoline.ecgdicom.annotation.WaveformAnnotation;
import dev.isoline.ecgdicom.annotation.WaveformAnnotation.Measurement;
import java.util.List;

/** Waveform Annotation Module, PS3.3 C.10.10; C: only where there is an annotation. */
public final class WaveformAnnotationModule {

    private static final String NAME = "Waveform Annotation (PS3.3 C.10.10)";

    /** First multiplex group, all of its channels; PS3.3 C.10.10.1.1. */
    private static final long[] ALL_CHANNELS = {1, 0};

    private WaveformAnnotationModule() {}

    public static DataSet of(WaveformObject object) {
        return new ModuleWriter(NAME)
                .type3(
                        Tag.WaveformAnnotationSequence,
                        object.annotations().stream().map(WaveformAnnotationModule::item).toList())
                .dataSet();
    }

    private static DataSet item(WaveformAnnotation annotation) {
        boolean placed = annotation.range().isPresent();
        return new ModuleWriter(NAME)
                .type1C(annotation.isText(), Tag.UnformattedTextValue, annotation.text())
                .type1C(!annotation.isText(), Tag.ConceptNameCodeSequence, name(annotation))
                .type3(
                        Tag.NumericValue,
                        annotation.measurement().<Object>map(Measurement::value).orElse(""))
                .type3(
                        Tag.MeasurementUnitsCodeSequence,
                        annotation
                                .measurement()
                                .map(measured -> CodeItems.code(measured.unit()))
                                .orElse(List.of()))
                .type1(Tag.ReferencedWaveformChannels, ALL_CHANNELS)
                .type1C(
                        placed,
                        Tag.TemporalRangeType,
                        annotation.range().map(Enum::name).orElse(""))
                .type1C(placed, Tag.ReferencedSamplePositions, annotation.positions())
                .type3(Tag.AnnotationGroupNumber, annotation.group() == 0 ? "" : annotation.group())
                .dataSet();
    }

    private static List<DataSet> name(WaveformAnnotation annotation) {
        List<DataSet> name = CodeItems.code(annotation.concept());
        annotation.modifier().ifPresent(code -> modify(name, code));
        return name;
    }

    private static void modify(List<DataSet> name, Code modifier) {
        name.forEach(item -> item.putItems(Tag.ModifierCodeSequence, CodeItems.code(modifier)));
    }
}
