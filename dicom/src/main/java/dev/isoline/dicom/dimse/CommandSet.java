package dev.isoline.dicom.dimse;

import dev.isoline.dicom.spi.SopReference;
import dev.isoline.dicom.spi.Status;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;

/**
 * A command set, PS3.7 6.3.1: Implicit VR Little Endian, ascending tags, each once, group 0000 with
 * its length. Elements not used here are read over.
 */
final class CommandSet {

    private static final int NO_DATA_SET = 0x0101;

    /** Any other value says that there is one. */
    private static final int DATA_SET = 0x0001;

    private static final int HEADER = 8;
    private static final int LONGEST_COMMENT = 64;

    private final Map<Integer, byte[]> elements = new TreeMap<>();

    private CommandSet() {}

    /** A request with its message id; the Affected SOP Class UID is not yet in it. */
    static CommandSet request(int field, int messageId) {
        return new CommandSet()
                .us(CommandTag.CommandField, field)
                .us(CommandTag.MessageID, messageId)
                .us(CommandTag.CommandDataSetType, NO_DATA_SET);
    }

    /** C-CANCEL of a request, PS3.7 9.3.2.3. */
    static CommandSet cancel(int messageId) {
        return new CommandSet()
                .us(CommandTag.CommandField, Field.C_CANCEL)
                .us(CommandTag.MessageIDBeingRespondedTo, messageId)
                .us(CommandTag.CommandDataSetType, NO_DATA_SET);
    }

    /** The response to this request, as yet without status and data set. */
    CommandSet response(Status status) {
        var response =
                new CommandSet()
                        .us(CommandTag.CommandField, field() | Field.RESPONSE)
                        .us(CommandTag.MessageIDBeingRespondedTo, messageId())
                        .us(CommandTag.CommandDataSetType, NO_DATA_SET)
                        .us(CommandTag.Status, status.code());
        if (!status.comment().isEmpty()) {
            response.text(CommandTag.ErrorComment, comment(status.comment()), ' ');
        }
        return response.affected(subject());
    }

    /** Printable characters of the default repertoire; PS3.7 table E.1-1, LO. */
    private static String comment(String text) {
        String printable = text.replaceAll("[^ -\\[\\]-~]", "?");
        return printable.substring(0, Math.min(printable.length(), LONGEST_COMMENT));
    }

    CommandSet us(int tag, int value) {
        elements.put(tag, new byte[] {(byte) value, (byte) (value >>> 8)});
        return this;
    }

    CommandSet uid(int tag, String uid) {
        return uid.isEmpty() ? this : text(tag, uid, '\0');
    }

    private CommandSet text(int tag, String text, char padding) {
        String even = text.length() % 2 == 0 ? text : text + padding;
        elements.put(tag, even.getBytes(StandardCharsets.US_ASCII));
        return this;
    }

    /** Affected SOP Class and Instance UID. */
    CommandSet affected(SopReference instance) {
        return uid(CommandTag.AffectedSOPClassUID, instance.sopClass())
                .uid(CommandTag.AffectedSOPInstanceUID, instance.sopInstance());
    }

    /** A data set follows. */
    CommandSet withDataSet() {
        return us(CommandTag.CommandDataSetType, DATA_SET);
    }

    int field() {
        return number(CommandTag.CommandField);
    }

    boolean isResponse() {
        return (field() & Field.RESPONSE) != 0;
    }

    int messageId() {
        return number(CommandTag.MessageID);
    }

    int respondsTo() {
        return number(CommandTag.MessageIDBeingRespondedTo);
    }

    boolean hasDataSet() {
        return number(CommandTag.CommandDataSetType) != NO_DATA_SET;
    }

    /** A response without one has failed. */
    Status status() {
        return elements.containsKey(CommandTag.Status)
                ? new Status(number(CommandTag.Status), text(CommandTag.ErrorComment))
                : Status.PROCESSING_FAILURE.because("a response without status");
    }

    /** What it is about: affected or requested SOP class and instance, empty where not said. */
    SopReference subject() {
        return new SopReference(
                either(CommandTag.AffectedSOPClassUID, CommandTag.RequestedSOPClassUID),
                either(CommandTag.AffectedSOPInstanceUID, CommandTag.RequestedSOPInstanceUID));
    }

    private String either(int tag, int other) {
        return elements.containsKey(tag) ? text(tag) : text(other);
    }

    /** 0 where the element is absent or no US. */
    int number(int tag) {
        byte[] value = elements.getOrDefault(tag, new byte[0]);
        return value.length < 2 ? 0 : value[0] & 0xFF | (value[1] & 0xFF) << 8;
    }

    /** Empty where the element is absent; without padding. */
    String text(int tag) {
        byte[] value = elements.getOrDefault(tag, new byte[0]);
        String text = new String(value, StandardCharsets.US_ASCII);
        return text.replaceAll("[\\x00 ]+$", "");
    }

    byte[] encode() {
        int length = elements.values().stream().mapToInt(v -> HEADER + v.length).sum();
        ByteBuffer bytes = ByteBuffer.allocate(HEADER + 4 + length).order(ByteOrder.LITTLE_ENDIAN);
        bytes.putInt(CommandTag.CommandGroupLength).putInt(4).putInt(length);
        elements.forEach(
                (tag, value) ->
                        bytes.putShort((short) (tag >>> 16))
                                .putShort(tag.shortValue())
                                .putInt(value.length)
                                .put(value));
        return bytes.array();
    }

    /**
     * @throws InvalidMessage where the bytes are no command set
     */
    static CommandSet decode(byte[] octets) throws InvalidMessage {
        ByteBuffer bytes = ByteBuffer.wrap(octets).order(ByteOrder.LITTLE_ENDIAN);
        var command = new CommandSet();
        while (bytes.hasRemaining()) {
            if (bytes.remaining() < HEADER) {
                throw new InvalidMessage("a command element without a header");
            }
            int tag = bytes.getShort() << 16 | bytes.getShort() & 0xFFFF;
            int length = bytes.getInt();
            if (length < 0 || length > bytes.remaining()) {
                throw new InvalidMessage("a command element longer than its command set");
            }
            byte[] value = new byte[length];
            bytes.get(value);
            if (tag >>> 16 != 0 || command.elements.put(tag, value) != null) {
                throw new InvalidMessage("a command element twice or of another group");
            }
        }
        command.elements.remove(CommandTag.CommandGroupLength);
        if (!command.elements.containsKey(CommandTag.CommandField)) {
            throw new InvalidMessage("a command set without Command Field");
        }
        return command;
    }
}
