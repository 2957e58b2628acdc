package dev.isoline.dicom.upper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.dicom.upper.Pdu.ContextResult;
import dev.isoline.dicom.upper.Pdu.ProposedContext;
import dev.isoline.dicom.upper.UserInformation.RoleSelection;
import java.nio.ByteBuffer;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** PS3.8 9.3 octet by octet. */
class PduTest {

    /** Sent by DCMTK 3.6.7: {@code echoscu -aec "TERN ARCHIVE" -aet REC1}. */
    static final String ECHOSCU =
            "0100000000cd 0001 0000 5445524e204152434849564520202020 52454331202020202020202020202020"
                    + "00".repeat(32)
                    + "10000015 312e322e3834302e31303030382e332e312e312e31"
                    + "2000002e 0100ff00 30000011 312e322e3834302e31303030382e312e31"
                    + "40000011 312e322e3834302e31303030382e312e32"
                    + "5000003a 51000004 00004000"
                    + "5200001b 312e322e3237362e302e373233303031302e332e302e332e362e37"
                    + "5500000f 4f464649535f44434d544b5f333637";

    /** Answered by DCMTK 3.6.7 storescp to two contexts, the second of an unknown SOP class. */
    static final String STORESCP =
            "0200000000d5 0001 0000 53544f52455343502020202020202020 52454331202020202020202020202020"
                    + "00".repeat(32)
                    + "10000015 312e322e3834302e31303030382e332e312e312e31"
                    + "21000019 01000000 40000011 312e322e3834302e31303030382e312e32"
                    + "21000019 03000300 40000011 312e322e3834302e31303030382e312e32"
                    + "5000003a 51000004 00004000"
                    + "5200001b 312e322e3237362e302e373233303031302e332e302e332e362e37"
                    + "5500000f 4f464649535f44434d544b5f333637";

    private static final UserInformation DCMTK =
            new UserInformation(16384, "1.2.276.0.7230010.3.0.3.6.7", "OFFIS_DCMTK_367", List.of());

    static byte[] octets(String hex) {
        return HexFormat.of().parseHex(hex.replace(" ", ""));
    }

    private static Pdu decode(String hex) throws InvalidPdu {
        ByteBuffer bytes = ByteBuffer.wrap(octets(hex));
        int type = bytes.get();
        bytes.get();
        assertThat(bytes.getInt()).isEqualTo(bytes.remaining());
        return PduDecoder.decode(PduType.of(type), bytes);
    }

    private static String encode(Pdu pdu) {
        ByteBuffer bytes = PduEncoder.encode(pdu);
        return HexFormat.of().formatHex(bytes.array(), 0, bytes.limit());
    }

    private static final Pdu.AssociateRq REQUEST =
            new Pdu.AssociateRq(
                    1,
                    "TERN ARCHIVE    ",
                    "REC1            ",
                    "1.2.840.10008.3.1.1.1",
                    List.of(
                            new ProposedContext(
                                    1, "1.2.840.10008.1.1", List.of("1.2.840.10008.1.2"))),
                    DCMTK);

    @Test
    void the_request_of_echoscu_is_read_and_written() throws InvalidPdu {
        assertThat(decode(ECHOSCU)).isEqualTo(REQUEST);
        // DCMTK sends FF in a reserved byte of the context
        assertThat(encode(REQUEST))
                .isEqualTo(ECHOSCU.replace(" ", "").replace("0100ff00", "01000000"));
    }

    @Test
    void the_answer_of_storescp_is_read_and_written() throws InvalidPdu {
        var answer =
                new Pdu.AssociateAc(
                        "STORESCP        ",
                        "REC1            ",
                        List.of(
                                new ContextResult(1, 0, "1.2.840.10008.1.2"),
                                new ContextResult(3, 3, "1.2.840.10008.1.2")),
                        DCMTK);
        assertThat(decode(STORESCP)).isEqualTo(answer);
        assertThat(encode(answer)).isEqualTo(STORESCP.replace(" ", ""));
    }

    /** Tables 9-21, 9-24, 9-25, 9-26: four bytes follow the length, reserved ones zero. */
    @Test
    void the_short_pdus_have_four_bytes() throws InvalidPdu {
        assertThat(encode(new Pdu.AssociateRj(2, 3, 1))).isEqualTo("03000000000400020301");
        assertThat(encode(new Pdu.ReleaseRq())).isEqualTo("05000000000400000000");
        assertThat(encode(new Pdu.ReleaseRp())).isEqualTo("06000000000400000000");
        assertThat(encode(new Pdu.Abort(2, 6))).isEqualTo("07000000000400000206");
        assertThat(decode("03ff00000004ff020301")).isEqualTo(new Pdu.AssociateRj(2, 3, 1));
        assertThat(decode("05ff00000004ffffffff")).isEqualTo(new Pdu.ReleaseRq());
        assertThat(decode("07ff00000004ffff0206")).isEqualTo(new Pdu.Abort(2, 6));
    }

    /**
     * 9.3.1: unrecognised items are skipped; D.2: so are sub-items, in whatever order they stand.
     */
    @Test
    void unknown_items_and_any_order_of_sub_items_are_read() throws InvalidPdu {
        String unknown = "7f000003 010203";
        String user =
                "50000035"
                        + unknown
                        + "5500000f 4f464649535f44434d544b5f333637"
                        + "5200001b 312e322e3237362e302e373233303031302e332e302e332e362e37"
                        + "51000004 00004000".replace(" ", "");
        int cut = ECHOSCU.indexOf("5000003a");
        String body =
                ECHOSCU.substring(13, ECHOSCU.indexOf("2000002e"))
                        + user.replace("50000035", "50000041")
                        + unknown
                        + ECHOSCU.substring(ECHOSCU.indexOf("2000002e"), cut);
        int length = octets(body).length;
        assertThat(decode(String.format("0100%08x", length) + body)).isEqualTo(REQUEST);
    }

    /** PS3.7 table D.3-9: uid-length, uid, SCU role, SCP role. */
    @Test
    void role_selection_is_read_and_written() throws InvalidPdu {
        var user =
                new UserInformation(
                        0,
                        "2.999",
                        "",
                        List.of(new RoleSelection("1.2.840.10008.1.20.1", false, true)));
        var rq =
                new Pdu.AssociateRq(
                        1, "A               ", "B               ", "1.2", List.of(), user);
        assertThat(encode(rq))
                .endsWith(
                        "54000018 0014 312e322e3834302e31303030382e312e32302e31 00 01"
                                .replace(" ", ""));
        assertThat(decode(encode(rq))).isEqualTo(rq);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "010000000004 00010000", // shorter than its fixed fields
                "050000000003 000000", // not four bytes
                "070000000005 0000000000"
            })
    void what_is_too_short_or_too_long_is_invalid(String hex) {
        assertThatThrownBy(() -> decode(hex)).isInstanceOf(InvalidPdu.class);
    }

    @Test
    void an_item_longer_than_its_pdu_and_an_even_context_id_are_invalid() {
        assertThatThrownBy(() -> decode(ECHOSCU.replace("5500000f", "55000010")))
                .isInstanceOf(InvalidPdu.class)
                .hasMessage("an item longer than what it stands in");
        assertThatThrownBy(() -> decode(ECHOSCU.replace("0100ff00", "0200ff00")))
                .isInstanceOf(InvalidPdu.class);
    }

    /** D.1: what a peer does not say it can receive is not taken for unlimited. */
    @Test
    void a_maximum_length_that_is_absent_or_huge_is_read() throws InvalidPdu {
        var absent = (Pdu.AssociateRq) decode(ECHOSCU.replace("51000004", "7e000004"));
        assertThat(absent.user().maxLength()).isEqualTo(16384);
        var huge =
                (Pdu.AssociateRq) decode(ECHOSCU.replace("51000004 00004000", "51000004 ffffffff"));
        assertThat(huge.user().maxLength()).isZero();
    }
}
