package dev.isoline.dicom.upper;

import dev.isoline.dicom.upper.Pdu.ContextResult;
import dev.isoline.dicom.upper.Pdu.ProposedContext;
import dev.isoline.dicom.upper.UserInformation.RoleSelection;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/** PDUs to bytes, PS3.8 9.3; reserved fields are zero. */
final class PduEncoder {

    private static final int VERSION = 1;
    private static final int TITLE = 16;
    private static final int RESERVED = 32;
    private static final int HEADER = 6;

    private PduEncoder() {}

    static ByteBuffer encode(Pdu pdu) {
        if (pdu instanceof Pdu.PDataTf data) {
            return data.octets();
        }
        byte[] body = body(pdu);
        return ByteBuffer.allocate(HEADER + body.length)
                .put((byte) PduType.of(pdu).code())
                .put((byte) 0)
                .putInt(body.length)
                .put(body)
                .flip();
    }

    private static byte[] body(Pdu pdu) {
        if (pdu instanceof Pdu.AssociateRq rq) {
            return associateRq(rq);
        } else if (pdu instanceof Pdu.AssociateAc ac) {
            return associateAc(ac);
        } else if (pdu instanceof Pdu.AssociateRj rj) {
            return new byte[] {0, (byte) rj.result(), (byte) rj.source(), (byte) rj.reason()};
        } else if (pdu instanceof Pdu.Abort abort) {
            return new byte[] {0, 0, (byte) abort.source(), (byte) abort.reason()};
        }
        return new byte[4];
    }

    private static byte[] associateRq(Pdu.AssociateRq rq) {
        var body = fixed(rq.called(), rq.calling());
        item(body, Item.APPLICATION_CONTEXT, ascii(rq.applicationContext()));
        rq.contexts().forEach(c -> item(body, Item.PROPOSED_CONTEXT, proposed(c)));
        item(body, Item.USER_INFORMATION, user(rq.user()));
        return body.toByteArray();
    }

    private static byte[] associateAc(Pdu.AssociateAc ac) {
        var body = fixed(ac.called(), ac.calling());
        item(body, Item.APPLICATION_CONTEXT, ascii(Pdu.APPLICATION_CONTEXT));
        ac.contexts().forEach(c -> item(body, Item.CONTEXT_RESULT, result(c)));
        item(body, Item.USER_INFORMATION, user(ac.user()));
        return body.toByteArray();
    }

    private static ByteArrayOutputStream fixed(String called, String calling) {
        var body = new ByteArrayOutputStream();
        two(body, VERSION);
        two(body, 0);
        body.writeBytes(title(called));
        body.writeBytes(title(calling));
        body.writeBytes(new byte[RESERVED]);
        return body;
    }

    private static byte[] title(String title) {
        return ascii((title + " ".repeat(TITLE)).substring(0, TITLE));
    }

    private static byte[] proposed(ProposedContext context) {
        var body = new ByteArrayOutputStream();
        body.writeBytes(new byte[] {(byte) context.id(), 0, 0, 0});
        item(body, Item.ABSTRACT_SYNTAX, ascii(context.abstractSyntax()));
        context.transferSyntaxes().forEach(t -> item(body, Item.TRANSFER_SYNTAX, ascii(t)));
        return body.toByteArray();
    }

    private static byte[] result(ContextResult context) {
        var body = new ByteArrayOutputStream();
        body.writeBytes(new byte[] {(byte) context.id(), 0, (byte) context.result(), 0});
        item(body, Item.TRANSFER_SYNTAX, ascii(context.transferSyntax()));
        return body.toByteArray();
    }

    private static byte[] user(UserInformation user) {
        var body = new ByteArrayOutputStream();
        byte[] length = ByteBuffer.allocate(4).putInt(user.maxLength()).array();
        item(body, Item.MAXIMUM_LENGTH, length);
        item(body, Item.IMPLEMENTATION_CLASS, ascii(user.implementationClass()));
        user.roles().forEach(role -> item(body, Item.ROLE_SELECTION, role(role)));
        if (!user.implementationVersion().isEmpty()) {
            item(body, Item.IMPLEMENTATION_VERSION, ascii(user.implementationVersion()));
        }
        return body.toByteArray();
    }

    private static byte[] role(RoleSelection role) {
        var body = new ByteArrayOutputStream();
        byte[] sopClass = ascii(role.sopClass());
        two(body, sopClass.length);
        body.writeBytes(sopClass);
        body.write(role.scu() ? 1 : 0);
        body.write(role.scp() ? 1 : 0);
        return body.toByteArray();
    }

    private static void item(ByteArrayOutputStream body, int type, byte... content) {
        body.write(type);
        body.write(0);
        two(body, content.length);
        body.writeBytes(content);
    }

    private static void two(ByteArrayOutputStream body, int value) {
        body.write(value >>> 8);
        body.write(value);
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }
}
