package dev.isoline.conformance.validator;

import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Tag;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * An ECG object against the limits of its IOD: {@link EcgRule}. The one judge here that is our own,
 * for there is no public one; it shares nothing with the gateway but the reader of data sets.
 */
public final class EcgJudge {

    static final String NAME = "ECG IOD limits";

    /** Empty for an object of another SOP class. */
    public Optional<Verdict> judge(String name, Path file) {
        try (var channel = FileChannel.open(file)) {
            var object = new Attributes(Part10.read(channel, ReadLimits.DEFAULT).dataSet());
            return EcgLimits.of(object.text(Tag.SOPClassUID))
                    .map(limits -> Verdict.of(name, NAME, findings(limits, object)));
        } catch (IOException e) {
            String text = "cannot be read: " + e.getMessage();
            return Optional.of(Verdict.of(name, NAME, List.of(Finding.error("", text))));
        }
    }

    private static List<Finding> findings(EcgLimits limits, Attributes object) {
        var findings = new ArrayList<Finding>();
        for (EcgRule rule : EcgRule.values()) {
            if (!parts(rule.scope, object).allMatch(part -> rule.holds.test(limits, part))) {
                findings.add(
                        Finding.error(
                                Tag.format(rule.tag),
                                "not so: " + rule.says + " (PS3.3 " + rule.source + ")"));
            }
        }
        return findings;
    }

    private static Stream<Attributes> parts(EcgRule.Scope scope, Attributes object) {
        var groups = object.items(Tag.WaveformSequence).stream();
        return switch (scope) {
            case OBJECT -> Stream.of(object);
            case GROUP -> groups;
            case CHANNEL -> groups.flatMap(g -> g.items(Tag.ChannelDefinitionSequence).stream());
            case ANNOTATION -> object.items(Tag.WaveformAnnotationSequence).stream();
        };
    }
}
