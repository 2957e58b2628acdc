package dev.isoline.dicom;

import static dev.isoline.dicom.TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
import static dev.isoline.dicom.TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files other programs wrote: read, written again, the same data set. */
class RealFilesTest {

    @TempDir Path folder;

    @Test
    void a_rewritten_file_holds_the_same_data_set() throws IOException {
        for (Path file : RealFiles.all()) {
            DataSet original = Files10.read(file).dataSet();
            Path copy = folder.resolve("copy.dcm");
            Files10.write(copy, EXPLICIT_VR_LITTLE_ENDIAN, original);
            assertThat(Files10.read(copy).dataSet()).as(file.toString()).isEqualTo(original);
        }
    }

    @Test
    void pydicom_sees_no_difference_between_the_file_and_what_we_wrote() throws Exception {
        for (Path file : RealFiles.all()) {
            DataSet original = Files10.read(file).dataSet();
            for (TransferSyntax syntax : TransferSyntax.values()) {
                Path copy = folder.resolve(syntax + ".dcm");
                Files10.write(copy, syntax, original);
            }
            String script =
                    """
                    import pydicom
                    one = pydicom.dcmread(r'%s')
                    explicit = pydicom.dcmread(r'%s')
                    implicit = pydicom.dcmread(r'%s')
                    assert one == explicit, 'explicit'
                    for ds in (one, implicit):
                        ds.remove_private_tags()
                    assert one == implicit, 'implicit'
                    for g in range(len(one.WaveformSequence)):
                        assert (one.waveform_array(g) == implicit.waveform_array(g)).all()
                    print('equal')
                    """;
            String same =
                    Python.run(
                            script.formatted(
                                    file,
                                    folder.resolve(EXPLICIT_VR_LITTLE_ENDIAN + ".dcm"),
                                    folder.resolve(IMPLICIT_VR_LITTLE_ENDIAN + ".dcm")));
            assertThat(same).as(file.toString()).isEqualTo("equal");
        }
    }

    /** DCMTK's text of both, but for the lengths, which we write defined (PS3.5 7.5). */
    @Test
    void dcmdump_sees_no_difference_either() throws Exception {
        Dcmtk.require("dcmdump");
        for (Path file : RealFiles.all()) {
            Path copy = folder.resolve("dumped.dcm");
            Files10.write(copy, EXPLICIT_VR_LITTLE_ENDIAN, Files10.read(file).dataSet());
            assertThat(dump(copy)).as(file.toString()).isNotEmpty().isEqualTo(dump(file));
        }
    }

    private static List<String> dump(Path file) throws Exception {
        return Dcmtk.run("dcmdump", "+L", file.toString())
                .lines()
                .filter(line -> line.matches(" *\\([0-9a-f]{4},[0-9a-f]{4}\\) .*"))
                .filter(line -> !line.startsWith("(0002,") && !line.contains("(fffe,e0"))
                .map(
                        line ->
                                line.contains(" SQ ")
                                        ? line.replaceAll("(un)?defined|explicit|#.*", "")
                                        : line)
                .toList();
    }
}
