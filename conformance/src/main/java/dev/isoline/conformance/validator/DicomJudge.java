package dev.isoline.conformance.validator;

import java.nio.file.Path;
import java.util.List;

/**
 * dciodvfy (dicom3tools): the object against its IOD. Any line that begins with {@code Error} is a
 * failure; its warnings are kept.
 */
public final class DicomJudge {

    private static final String NAME = "dciodvfy";

    /**
     * @param name how the verdict calls the file
     */
    public Verdict judge(String name, Path file) {
        return ReferenceTool.find(NAME)
                .map(tool -> Verdict.of(name, NAME, findings(tool, file)))
                .orElseGet(() -> Verdict.notInstalled(name, NAME, "Debian package dicom3tools"));
    }

    private static List<Finding> findings(ReferenceTool tool, Path file) {
        String output = tool.run(List.of(file.toString())).output();
        return output.lines()
                .filter(line -> line.startsWith("Error") || line.startsWith("Warning"))
                .map(DicomJudge::finding)
                .toList();
    }

    private static Finding finding(String line) {
        return line.startsWith("Error") ? Finding.error("", line) : Finding.warning("", line);
    }
}
