package dev.isoline.dicom;

import static dev.isoline.dicom.TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN;
import static dev.isoline.dicom.TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** PS3.5 7.8: private elements and who reserved them. */
class PrivateElementsTest {

    private static final String CREATOR = "TERN STREET";

    @TempDir Path folder;

    private static DataSet withBlock(int group, String creator) throws DicomException {
        var dataSet = new DataSet();
        PrivateBlock block = PrivateBlock.reserve(dataSet, group, creator);
        return dataSet.putBytes(block.tag(1), Vr.LO, "one".getBytes())
                .putBytes(block.tag(0xFF), Vr.US, new byte[] {1, 0});
    }

    @Test
    void a_creator_reserves_the_first_free_block_once() throws DicomException {
        DataSet dataSet = withBlock(0x0029, "SABLE POINT");
        PrivateBlock second = PrivateBlock.reserve(dataSet, 0x0029, CREATOR);
        assertThat(second).isEqualTo(new PrivateBlock(0x0029, 0x11));
        assertThat(PrivateBlock.reserve(dataSet, 0x0029, CREATOR)).isEqualTo(second);
        assertThat(second.tag(0x03)).isEqualTo(0x0029_1103);
        assertThat(dataSet.text(0x0029_0011)).contains(CREATOR);
    }

    @Test
    void a_block_is_dropped_with_its_creator() throws DicomException {
        DataSet dataSet = withBlock(0x0029, CREATOR).putText(0x0029_0011, "OTHER");
        dataSet.putBytes(0x0029_1101, Vr.UN, new byte[2]);
        dataSet.remove(PrivateBlock.find(dataSet, 0x0029, CREATOR).orElseThrow().creator());
        assertThat(dataSet.toString()).isEqualTo("[(0029,0011), (0029,1101)]");
    }

    @Test
    void a_block_is_kept_with_its_creator_in_both_syntaxes() throws IOException {
        var item = withBlock(0x0029, CREATOR);
        DataSet dataSet =
                withBlock(0x0009, "SABLE POINT")
                        .putItems(Tag.AcquisitionContextSequence, List.of(item));
        for (TransferSyntax syntax : TransferSyntax.values()) {
            DataSet back = Files10.read(folder, syntax, Files10.bytes(folder, syntax, dataSet));
            DataSet inside = back.item(Tag.AcquisitionContextSequence).orElseThrow();
            PrivateBlock block = PrivateBlock.find(inside, 0x0029, CREATOR).orElseThrow();
            assertThat(inside.bytes(block.tag(1))).startsWith("one".getBytes());
        }
    }

    @Test
    void an_item_inherits_no_creator() throws DicomException {
        DataSet item = new DataSet();
        DataSet dataSet =
                withBlock(0x0029, CREATOR).putItems(Tag.AcquisitionContextSequence, List.of(item));
        assertThat(PrivateBlock.find(dataSet, 0x0029, CREATOR)).isPresent();
        assertThat(PrivateBlock.find(item, 0x0029, CREATOR)).isEmpty();
    }

    @Test
    void a_creator_is_ascii() {
        assertThatThrownBy(() -> PrivateBlock.reserve(new DataSet(), 0x0029, "GRÜN"))
                .hasMessage("(0029,0010) needs a creator of 1 to 64 characters of ASCII");
    }

    @Test
    void standard_groups_have_no_private_blocks() {
        assertThatThrownBy(() -> PrivateBlock.reserve(new DataSet(), 0x0028, CREATOR))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> PrivateBlock.reserve(new DataSet(), 0x0007, CREATOR))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** Real files hold private elements without a creator. */
    @Test
    void an_element_without_creator_survives() throws IOException {
        DataSet dataSet = new DataSet().putBytes(0x0029_1001, Vr.UN, new byte[] {1, 2});
        byte[] explicit = Files10.bytes(folder, EXPLICIT_VR_LITTLE_ENDIAN, dataSet);
        DataSet back = Files10.read(folder, EXPLICIT_VR_LITTLE_ENDIAN, explicit);
        byte[] implicit = Files10.bytes(folder, IMPLICIT_VR_LITTLE_ENDIAN, back);
        assertThat(Files10.read(folder, IMPLICIT_VR_LITTLE_ENDIAN, implicit)).isEqualTo(dataSet);
    }
}
