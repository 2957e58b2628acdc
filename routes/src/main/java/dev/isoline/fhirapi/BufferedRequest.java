package dev.isoline.fhirapi;

import ca.uhn.fhir.util.UrlUtil;
import jakarta.servlet.ReadListener;
import jakarta.servlet.ServletInputStream;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** A request whose body has been read and can be read again. */
final class BufferedRequest extends HttpServletRequestWrapper {

    private final byte[] body;

    BufferedRequest(HttpServletRequest request, byte[] body) {
        super(request);
        this.body = body;
    }

    @Override
    public ServletInputStream getInputStream() {
        return new BodyStream(new ByteArrayInputStream(body));
    }

    /**
     * A search posted as a form (FHIR R4, 3.1.0.9): the server asks for its parameters here, and
     * Tomcat has none once the body was read.
     */
    @Override
    public Map<String, String[]> getParameterMap() {
        String type = getContentType();
        return type != null && type.startsWith("application/x-www-form-urlencoded")
                ? UrlUtil.parseQueryStrings(
                        WriteEntry.orEmpty(getQueryString()),
                        new String(body, StandardCharsets.UTF_8))
                : super.getParameterMap();
    }

    private static final class BodyStream extends ServletInputStream {

        private final ByteArrayInputStream bytes;

        BodyStream(ByteArrayInputStream bytes) {
            this.bytes = bytes;
        }

        @Override
        public int read() {
            return bytes.read();
        }

        @Override
        public int read(byte[] buffer, int offset, int length) {
            return bytes.read(buffer, offset, length);
        }

        @Override
        public boolean isFinished() {
            return bytes.available() == 0;
        }

        @Override
        public boolean isReady() {
            return true;
        }

        @Override
        public void setReadListener(ReadListener listener) {
            throw new UnsupportedOperationException("The FHIR server reads while it waits.");
        }
    }
}
