package dev.isoline.dicom.upper;

import dev.isoline.dicom.upper.Pdu.ContextResult;
import dev.isoline.dicom.upper.Pdu.ProposedContext;
import dev.isoline.dicom.upper.UserInformation.RoleSelection;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * Bytes to PDUs, PS3.8 9.3: reserved fields are not tested, unknown items are skipped, sub-items
 * stand in any order.
 */
final class PduDecoder {

    /** Version, two reserved bytes, two titles, 32 reserved bytes; 9.3.2. */
    private static final int FIXED_FIELDS = 68;

    private static final int TITLE = 16;
    private static final int RESERVED = 32;
    private static final int FOUR_BYTES = 4;

    /** What a peer is taken to receive that did not say; common practice, no source. */
    private static final int UNSAID_LENGTH = 16 * 1024;

    private PduDecoder() {}

    /** A PDU other than P-DATA-TF from what follows its length. */
    static Pdu decode(PduType type, ByteBuffer body) throws InvalidPdu {
        return switch (type) {
            case ASSOCIATE_RQ -> associateRq(body);
            case ASSOCIATE_AC -> associateAc(body);
            case P_DATA_TF -> throw new IllegalArgumentException("P-DATA-TF is read by PDV");
            default -> ofFourBytes(type, fourBytes(body));
        };
    }

    private static Pdu ofFourBytes(PduType type, ByteBuffer body) {
        return switch (type) {
            case ASSOCIATE_RJ -> rejection(body);
            case ABORT -> abort(body);
            case RELEASE_RQ -> new Pdu.ReleaseRq();
            default -> new Pdu.ReleaseRp();
        };
    }

    private static ByteBuffer fourBytes(ByteBuffer body) throws InvalidPdu {
        if (body.remaining() != FOUR_BYTES) {
            throw InvalidPdu.parameter("a PDU of 4 bytes has " + body.remaining());
        }
        return body.slice();
    }

    private static Pdu rejection(ByteBuffer body) {
        return new Pdu.AssociateRj(body.get(1) & 0xFF, body.get(2) & 0xFF, body.get(3) & 0xFF);
    }

    private static Pdu abort(ByteBuffer body) {
        return new Pdu.Abort(body.get(2) & 0xFF, body.get(3) & 0xFF);
    }

    private static Pdu associateRq(ByteBuffer body) throws InvalidPdu {
        checkFixed(body);
        int version = body.getShort();
        body.getShort();
        String called = title(body);
        String calling = title(body);
        body.position(body.position() + RESERVED);
        String applicationContext = "";
        var contexts = new ArrayList<ProposedContext>();
        var user = List.<Item>of();
        for (Item item : Item.all(body)) {
            switch (item.type()) {
                case Item.APPLICATION_CONTEXT -> applicationContext = item.text();
                case Item.PROPOSED_CONTEXT -> contexts.add(proposed(item.body()));
                case Item.USER_INFORMATION -> user = Item.all(item.body());
                default -> {} // unrecognised, skipped: PS3.8 9.3.1
            }
        }
        checkIds(contexts.stream().mapToInt(ProposedContext::id).toArray());
        return new Pdu.AssociateRq(
                version, called, calling, applicationContext, contexts, userInformation(user));
    }

    private static Pdu associateAc(ByteBuffer body) throws InvalidPdu {
        checkFixed(body);
        body.getInt();
        String called = title(body);
        String calling = title(body);
        body.position(body.position() + RESERVED);
        var contexts = new ArrayList<ContextResult>();
        var user = List.<Item>of();
        for (Item item : Item.all(body)) {
            switch (item.type()) {
                case Item.CONTEXT_RESULT -> contexts.add(result(item.body()));
                case Item.USER_INFORMATION -> user = Item.all(item.body());
                default -> {} // unrecognised, skipped: PS3.8 9.3.1
            }
        }
        return new Pdu.AssociateAc(called, calling, contexts, userInformation(user));
    }

    private static void checkFixed(ByteBuffer body) throws InvalidPdu {
        if (body.remaining() < FIXED_FIELDS) {
            throw InvalidPdu.parameter("an A-ASSOCIATE PDU of " + body.remaining() + " bytes");
        }
    }

    private static String title(ByteBuffer body) {
        byte[] title = new byte[TITLE];
        body.get(title);
        return new String(title, StandardCharsets.ISO_8859_1);
    }

    private static void checkIds(int... ids) throws InvalidPdu {
        var seen = new BitSet();
        for (int id : ids) {
            if (id % 2 == 0 || seen.get(id)) {
                throw InvalidPdu.parameter("presentation context id " + id + " even or twice");
            }
            seen.set(id);
        }
    }

    private static ByteBuffer contextHeader(ByteBuffer body) throws InvalidPdu {
        return Item.part(body, FOUR_BYTES);
    }

    private static ProposedContext proposed(ByteBuffer body) throws InvalidPdu {
        int id = contextHeader(body).get(0) & 0xFF;
        String abstractSyntax = "";
        var transferSyntaxes = new ArrayList<String>();
        for (Item item : Item.all(body)) {
            if (item.type() == Item.ABSTRACT_SYNTAX) {
                abstractSyntax = item.text();
            } else if (item.type() == Item.TRANSFER_SYNTAX) {
                transferSyntaxes.add(item.text());
            }
        }
        return new ProposedContext(id, abstractSyntax, transferSyntaxes);
    }

    private static ContextResult result(ByteBuffer body) throws InvalidPdu {
        ByteBuffer header = contextHeader(body);
        String syntax = "";
        for (Item item : Item.all(body)) {
            syntax = item.type() == Item.TRANSFER_SYNTAX ? item.text() : syntax;
        }
        return new ContextResult(header.get(0) & 0xFF, header.get(2) & 0xFF, syntax);
    }

    private static UserInformation userInformation(List<Item> items) throws InvalidPdu {
        int length = UNSAID_LENGTH;
        String implementation = "";
        String version = "";
        var roles = new ArrayList<RoleSelection>();
        for (Item item : items) {
            switch (item.type()) {
                case Item.MAXIMUM_LENGTH -> length = length(item.body());
                case Item.IMPLEMENTATION_CLASS -> implementation = item.text();
                case Item.IMPLEMENTATION_VERSION -> version = item.text();
                case Item.ROLE_SELECTION -> roles.add(role(item.body()));
                default -> {} // not offered or not known: PS3.8 D.2
            }
        }
        return new UserInformation(length, implementation, version, roles);
    }

    /** More than an int holds is no limit to us. */
    private static int length(ByteBuffer body) throws InvalidPdu {
        int length = Item.part(body, FOUR_BYTES).getInt(0);
        return Math.max(length, 0);
    }

    private static RoleSelection role(ByteBuffer body) throws InvalidPdu {
        ByteBuffer length = Item.part(body, 2);
        String sopClass = Item.text(Item.part(body, length.getShort(0) & 0xFFFF));
        ByteBuffer roles = Item.part(body, 2);
        return new RoleSelection(sopClass, roles.get(0) == 1, roles.get(1) == 1);
    }
}
