package dev.isoline.dicom;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Values by VR, PS3.5 6.2: text and numbers to the bytes of an element and back. */
final class ElementValues {

    private ElementValues() {}

    static Element text(int tag, Vr vr, String... values) throws DicomException {
        if (!vr.isText()) {
            throw new DicomException(tag, "has VR " + vr + ", which holds no text");
        }
        for (String value : values) {
            if (vr.partsByBackslash() && value.indexOf('\\') >= 0) {
                throw new DicomException(tag, "has a backslash in a value");
            }
        }
        byte[] bytes = CharacterSet.ISO_IR_192.encode(tag, String.join("\\", values));
        return new Element(tag, vr, new Value.Bytes(bytes, CharacterSet.ISO_IR_192));
    }

    static List<String> texts(Element element) throws DicomException {
        Vr vr = element.valueVr();
        if (element.isEmpty() || !vr.isText()) {
            return List.of();
        }
        byte[] bytes = element.bytes();
        String text = characterSet(element).decode(element.tag(), bytes);
        String[] parts = vr.partsByBackslash() ? text.split("\\\\", -1) : new String[] {text};
        return Arrays.stream(parts).map(part -> unpadded(part, vr)).toList();
    }

    private static CharacterSet characterSet(Element element) {
        return EncodedText.usesCharacterSet(element)
                ? ((Value.Bytes) element.value()).set()
                : CharacterSet.ISO_IR_6;
    }

    /** Leading spaces are significant in paragraphs only, PS3.5 6.2. */
    private static String unpadded(String value, Vr vr) {
        int end = value.length();
        while (end > 0 && (value.charAt(end - 1) == ' ' || value.charAt(end - 1) == 0)) {
            end--;
        }
        String text = value.substring(0, end);
        return vr.partsByBackslash() ? text.stripLeading() : text;
    }

    static Element integers(int tag, Vr vr, long... values) throws DicomException {
        if (vr == Vr.IS) {
            return text(
                    tag, vr, Arrays.stream(values).mapToObj(Long::toString).toArray(String[]::new));
        }
        var bytes = little(new byte[values.length * vr.width()]);
        for (long value : values) {
            putInteger(tag, vr, bytes, value);
        }
        return new Element(tag, vr, new Value.Bytes(bytes.array(), CharacterSet.ISO_IR_192));
    }

    private static void putInteger(int tag, Vr vr, ByteBuffer bytes, long value)
            throws DicomException {
        long low = vr == Vr.SS ? Short.MIN_VALUE : vr == Vr.SL ? Integer.MIN_VALUE : 0;
        long high = (vr.width() == 2 ? 0xFFFFL : 0xFFFF_FFFFL) + low;
        if (vr.width() < Long.BYTES && (value < low || value > high)) {
            throw new DicomException(tag, "has a number outside " + low + " to " + high);
        }
        switch (vr) {
            case SV, UV -> bytes.putLong(value);
            case US, SS -> bytes.putShort((short) value);
            case UL, SL -> bytes.putInt((int) value);
            case AT -> bytes.putShort((short) (value >>> 16)).putShort((short) value);
            default -> throw new DicomException(tag, "has VR " + vr + ", which holds no integers");
        }
    }

    static List<Long> integers(Element element) throws DicomException {
        Vr vr = element.valueVr();
        if (vr == Vr.IS) {
            var numbers = new ArrayList<Long>();
            for (String text : texts(element)) {
                numbers.add(parseLong(element.tag(), text));
            }
            return numbers;
        }
        var bytes = little(element.bytes());
        checkWidth(element, vr, bytes);
        var numbers = new ArrayList<Long>();
        while (bytes.hasRemaining()) {
            numbers.add(getInteger(element.tag(), vr, bytes));
        }
        return numbers;
    }

    private static long getInteger(int tag, Vr vr, ByteBuffer bytes) throws DicomException {
        return switch (vr) {
            case SV, UV -> bytes.getLong();
            case US -> bytes.getShort() & 0xFFFFL;
            case SS -> bytes.getShort();
            case UL -> bytes.getInt() & 0xFFFF_FFFFL;
            case SL -> bytes.getInt();
            case AT -> (bytes.getShort() & 0xFFFFL) << 16 | bytes.getShort() & 0xFFFFL;
            default -> throw new DicomException(tag, "has VR " + vr + ", which holds no integers");
        };
    }

    static Element numbers(int tag, Vr vr, double... values) throws DicomException {
        if (vr == Vr.DS) {
            var texts = new String[values.length];
            for (int i = 0; i < values.length; i++) {
                texts[i] = DecimalString.of(tag, values[i]);
            }
            return text(tag, vr, texts);
        }
        var bytes = little(new byte[values.length * vr.width()]);
        for (double value : values) {
            switch (vr) {
                case FL -> bytes.putFloat((float) value);
                case FD -> bytes.putDouble(value);
                default ->
                        throw new DicomException(tag, "has VR " + vr + ", which holds no decimals");
            }
        }
        return new Element(tag, vr, new Value.Bytes(bytes.array(), CharacterSet.ISO_IR_192));
    }

    static List<Double> numbers(Element element) throws DicomException {
        Vr vr = element.valueVr();
        if (vr == Vr.DS) {
            return decimals(element);
        }
        if (vr != Vr.FL && vr != Vr.FD) {
            return integers(element).stream().map(Long::doubleValue).toList();
        }
        var bytes = little(element.bytes());
        checkWidth(element, vr, bytes);
        var numbers = new ArrayList<Double>();
        while (bytes.hasRemaining()) {
            numbers.add(vr == Vr.FL ? (double) bytes.getFloat() : bytes.getDouble());
        }
        return numbers;
    }

    private static List<Double> decimals(Element element) throws DicomException {
        var numbers = new ArrayList<Double>();
        for (String text : texts(element)) {
            if (!text.isEmpty()) {
                numbers.add(DecimalString.parse(element.tag(), text));
            }
        }
        return numbers;
    }

    private static void checkWidth(Element element, Vr vr, ByteBuffer bytes) throws DicomException {
        if (bytes.remaining() % vr.width() != 0) {
            throw new DicomException(
                    element.tag(), "has a length that is no multiple of " + vr.width());
        }
    }

    private static long parseLong(int tag, String text) throws DicomException {
        try {
            return Long.parseLong(text.strip());
        } catch (NumberFormatException e) {
            throw new DicomException(tag, "is not an integer string");
        }
    }

    private static ByteBuffer little(byte[] bytes) {
        return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }
}
