package dev.isoline.dicom.spi;

import java.io.IOException;
import java.util.Map;

/** An association was aborted: A-ABORT with source and reason, PS3.8 table 9-26. */
public final class Abort extends IOException {

    private static final long serialVersionUID = 1;

    /** Source: DICOM UL service-user. */
    public static final int USER = 0;

    /** Source: DICOM UL service-provider. */
    public static final int PROVIDER = 2;

    private static final Map<Integer, String> REASONS =
            Map.of(
                    0, "no reason given",
                    1, "unrecognised PDU",
                    2, "unexpected PDU",
                    4, "unrecognised PDU parameter",
                    5, "unexpected PDU parameter",
                    6, "invalid PDU parameter value");

    private final boolean byPeer;
    private final int source;
    private final int reason;

    /**
     * @param byPeer true where the other side sent it
     * @param source 0 service user, 2 service provider
     * @param reason of a service provider
     */
    public Abort(boolean byPeer, int source, int reason) {
        this(byPeer, source, reason, "");
    }

    /**
     * @param detail what is known beyond source and reason
     */
    public Abort(boolean byPeer, int source, int reason, String detail) {
        super(words(byPeer, source, reason) + (detail.isEmpty() ? "" : "; " + detail));
        this.byPeer = byPeer;
        this.source = source;
        this.reason = reason;
    }

    private static String words(boolean byPeer, int source, int reason) {
        return "association aborted by "
                + (byPeer ? "the peer's" : "our")
                + (source == USER
                        ? " service user"
                        : " service provider: " + REASONS.getOrDefault(reason, "reason " + reason));
    }

    public boolean byPeer() {
        return byPeer;
    }

    /** 0 service user, 2 service provider. */
    public int source() {
        return source;
    }

    /** 0 to 6; means nothing where the source is the service user. */
    public int reason() {
        return reason;
    }
}
