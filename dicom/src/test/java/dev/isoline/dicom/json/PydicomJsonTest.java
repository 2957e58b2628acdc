package dev.isoline.dicom.json;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Files10;
import dev.isoline.dicom.Python;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.RealFiles;
import dev.isoline.dicom.Samples;
import dev.isoline.dicom.TransferSyntax;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Our DICOM JSON read by pydicom, and pydicom's read by us. */
class PydicomJsonTest {

    @TempDir Path folder;

    private static final String CHECK =
            """
            import pydicom
            def check(a, b, at):
                assert a.keys() == b.keys(), at
                for x in a:
                    y = b[x.tag]
                    assert x.VR == y.VR, x.tag
                    if x.VR == 'SQ':
                        assert len(x.value) == len(y.value), x.tag
                        for i, j in zip(x.value, y.value): check(i, j, x.tag)
                    else:
                        assert x.value == y.value or not x.value and not y.value, (x.tag, x.VR)
            one = pydicom.dcmread(r'%s')
            two = %s
            check(one, two, 'top')
            print('equal')
            """;

    private static void same(Path file, String reading) throws Exception {
        String said = Python.run(CHECK.formatted(file, reading));
        assertThat(said).as(file.toString()).isEqualTo("equal");
    }

    @Test
    void pydicom_reads_from_our_json_what_it_reads_from_the_file() throws Exception {
        for (Path file : RealFiles.all()) {
            sameAsOurJson(file);
        }
    }

    @Test
    void pydicom_reads_every_kind_of_value_from_our_json() throws Exception {
        Path file = folder.resolve("everything.dcm");
        Files10.write(file, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN, Samples.everything());
        sameAsOurJson(file);
    }

    private void sameAsOurJson(Path file) throws Exception {
        Path json = folder.resolve("ours.json");
        try (var out = Files.newOutputStream(json)) {
            new DicomJsonWriter(out, BulkDataNames.NONE).write(Files10.read(file).dataSet());
        }
        same(
                file,
                "pydicom.Dataset.from_json(open(r'%s', encoding='utf-8').read())".formatted(json));
    }

    @Test
    void we_read_from_the_json_of_pydicom_what_is_in_the_file() throws Exception {
        for (Path file : RealFiles.all()) {
            Path json = folder.resolve("theirs.json");
            Python.run(
                    """
                    import pydicom
                    ds = pydicom.dcmread(r'%s')
                    open(r'%s', 'w', encoding='utf-8').write(ds.to_json())
                    """
                            .formatted(file, json));
            Path copy = folder.resolve("copy.dcm");
            Files10.write(copy, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN, read(json));
            same(file, "pydicom.dcmread(r'%s')".formatted(copy));
        }
    }

    private static DataSet read(Path json) throws IOException {
        try (var in = Files.newInputStream(json)) {
            return DicomJsonReader.read(in, ReadLimits.DEFAULT, BulkDataSource.NONE);
        }
    }
}
