package dev.isoline.dicom.spi;

/**
 * Maximum lengths of the variable field of a P-DATA-TF PDU, PS3.8 D.1; in bytes, 0 for no limit.
 *
 * @param receive what we announce
 * @param send what we do not exceed, even where the peer announces more
 */
public record MaxPdu(int receive, int send) {

    /** 256 KiB to receive; to send, what the peer can take. */
    public static final MaxPdu DEFAULT = new MaxPdu(256 * 1024, 0);

    /** A fragment of a length that carries anything at all. */
    private static final int LEAST = 128;

    public MaxPdu {
        if (tooSmall(receive) || tooSmall(send)) {
            throw new IllegalArgumentException(
                    "a maximum PDU length is 0 (no limit) or at least " + LEAST + " bytes");
        }
    }

    private static boolean tooSmall(int length) {
        return length != 0 && length < LEAST;
    }
}
