package dev.isoline.conformance.demo;

import dev.isoline.conformance.validator.Judges;
import dev.isoline.conformance.validator.Verdict;
import dev.isoline.conformance.validator.Verdict.Outcome;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Every message and object of the demo before the reference implementations. */
final class Judgement {

    private static final List<String> FOLDERS =
            List.of("harrow-bay", "sable-point", "tern-street", "archive");

    private final DemoFolder folder;
    private final Story story;

    Judgement(DemoFolder folder, Story story) {
        this.folder = folder;
        this.story = story;
    }

    void judge() throws IOException {
        var judges = new Judges();
        var verdicts = new ArrayList<Verdict>();
        for (Path file : files()) {
            String name = folder.root().relativize(file).toString();
            verdicts.addAll(judges.judge(name, file));
        }
        story.tell(
                "The reference implementations have judged: %d passed, %d failed, %d not checked.",
                count(verdicts, Outcome.PASSED),
                count(verdicts, Outcome.FAILED),
                count(verdicts, Outcome.NOT_CHECKED));
        verdicts.forEach(this::tell);
    }

    private void tell(Verdict verdict) {
        if (verdict.outcome() == Outcome.NOT_CHECKED) {
            story.add("not checked: %s, %s", verdict.file(), verdict.findings().get(0).text());
        }
        verdict.findings().stream()
                .filter(finding -> finding.isError())
                .forEach(
                        finding ->
                                story.fail(
                                        "%s (%s): %s %s",
                                        verdict.file(),
                                        verdict.judge(),
                                        finding.place(),
                                        finding.text()));
    }

    private static long count(List<Verdict> verdicts, Outcome outcome) {
        return verdicts.stream().filter(v -> v.outcome() == outcome).count();
    }

    private List<Path> files() throws IOException {
        var files = new ArrayList<Path>();
        for (String name : FOLDERS) {
            try (Stream<Path> below = Files.walk(folder.path(name))) {
                below.filter(Files::isRegularFile).sorted().forEach(files::add);
            }
        }
        return files;
    }
}
