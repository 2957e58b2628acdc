package dev.isoline.dicom.upper;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * An item or sub-item of an association PDU: type, a reserved byte, 16-bit length, body; PS3.8
 * 9.3.2.
 *
 * @param type what it is; an unknown one is skipped by its reader
 * @param body big endian
 */
record Item(int type, ByteBuffer body) {

    static final int APPLICATION_CONTEXT = 0x10;
    static final int PROPOSED_CONTEXT = 0x20;
    static final int CONTEXT_RESULT = 0x21;
    static final int ABSTRACT_SYNTAX = 0x30;
    static final int TRANSFER_SYNTAX = 0x40;
    static final int USER_INFORMATION = 0x50;
    static final int MAXIMUM_LENGTH = 0x51;
    static final int IMPLEMENTATION_CLASS = 0x52;
    static final int ROLE_SELECTION = 0x54;
    static final int IMPLEMENTATION_VERSION = 0x55;

    private static final int HEADER = 4;

    /** The items up to the end of the bytes. */
    static List<Item> all(ByteBuffer bytes) throws InvalidPdu {
        var items = new ArrayList<Item>();
        while (bytes.hasRemaining()) {
            if (bytes.remaining() < HEADER) {
                throw InvalidPdu.parameter("an item without a header");
            }
            int type = bytes.get() & 0xFF;
            bytes.get(); // reserved, not tested
            items.add(new Item(type, part(bytes, bytes.getShort() & 0xFFFF)));
        }
        return items;
    }

    /** The next bytes, as they are. */
    static ByteBuffer part(ByteBuffer bytes, int length) throws InvalidPdu {
        if (length > bytes.remaining()) {
            throw InvalidPdu.parameter("an item longer than what it stands in");
        }
        ByteBuffer part = bytes.slice(bytes.position(), length);
        bytes.position(bytes.position() + length);
        return part;
    }

    /** The rest of a body as text; padding after a UID is no part of it. */
    static String text(ByteBuffer bytes) {
        String text = StandardCharsets.ISO_8859_1.decode(bytes).toString();
        int end = text.length();
        while (end > 0 && (text.charAt(end - 1) == 0 || text.charAt(end - 1) == ' ')) {
            end--;
        }
        return text.substring(0, end);
    }

    String text() {
        return text(body.duplicate());
    }
}
