package dev.isoline.dicom.json;

import java.io.IOException;
import java.io.Writer;
import java.nio.ByteBuffer;
import java.nio.channels.WritableByteChannel;
import java.util.Base64;

/** Strings of JSON, RFC 8259 section 7. */
final class JsonText {

    private static final String SHORT_ESCAPES = "\"\\\b\f\n\r\t";
    private static final String THEIR_LETTERS = "\"\\bfnrt";

    private JsonText() {}

    static void write(Writer out, String text) throws IOException {
        out.write('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            int known = SHORT_ESCAPES.indexOf(c);
            if (known >= 0) {
                out.write('\\');
                out.write(THEIR_LETTERS.charAt(known));
            } else if (c < ' ' || isUnpaired(text, i)) {
                out.write(String.format("\\u%04x", (int) c));
            } else {
                out.write(c);
            }
        }
        out.write('"');
    }

    /** Half of a surrogate pair has no form in UTF-8. */
    private static boolean isUnpaired(String text, int at) {
        char c = text.charAt(at);
        if (Character.isHighSurrogate(c)) {
            return at + 1 == text.length() || !Character.isLowSurrogate(text.charAt(at + 1));
        }
        return Character.isLowSurrogate(c)
                && (at == 0 || !Character.isHighSurrogate(text.charAt(at - 1)));
    }

    /** A channel whose bytes become base64 in the string being written. */
    static final class Base64Channel implements WritableByteChannel {

        private static final int WHOLE_TRIPLES = 3 * 4096;

        private final Writer out;
        private final ByteBuffer pending = ByteBuffer.allocate(WHOLE_TRIPLES);

        Base64Channel(Writer out) {
            this.out = out;
        }

        @Override
        public int write(ByteBuffer source) throws IOException {
            int before = source.remaining();
            while (source.hasRemaining()) {
                int count = Math.min(source.remaining(), pending.remaining());
                pending.put(pending.position(), source, source.position(), count);
                pending.position(pending.position() + count);
                source.position(source.position() + count);
                if (!pending.hasRemaining()) {
                    encode();
                }
            }
            return before;
        }

        private void encode() throws IOException {
            pending.flip();
            ByteBuffer encoded = Base64.getEncoder().encode(pending);
            while (encoded.hasRemaining()) {
                out.write(encoded.get());
            }
            pending.clear();
        }

        @Override
        public boolean isOpen() {
            return true;
        }

        /** Writes what is pending, with its padding. */
        @Override
        public void close() throws IOException {
            encode();
        }
    }
}
