package dev.isoline.fhirapi;

import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.MessageTable.NewMessage;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.util.HexFormat;
import java.util.Set;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.util.ContentCachingResponseWrapper;

/**
 * Stores the body of every POST and PUT as it came, before anything can refuse it, and the answer
 * it got before that is sent.
 */
final class RawRequestFilter extends OncePerRequestFilter {

    /** Request attribute: row of the stored message. */
    static final String MESSAGE_ID = RawRequestFilter.class.getName() + ".messageId";

    static final int LARGEST_BODY = 16 * 1024 * 1024;

    private static final Set<String> WITH_BODY = Set.of("POST", "PUT", "PATCH");

    private final Ledger ledger;
    private final Clock clock;

    RawRequestFilter(Ledger ledger, Clock clock) {
        this.ledger = ledger;
        this.clock = clock;
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return !WITH_BODY.contains(request.getMethod());
    }

    @Override
    protected void doFilterInternal(
            HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        byte[] raw = request.getInputStream().readNBytes(LARGEST_BODY + 1);
        if (raw.length > LARGEST_BODY) {
            String text = "The request is larger than " + LARGEST_BODY + " bytes.";
            FhirError.send(response, 413, IssueType.TOOLONG, text);
            return;
        }
        NewMessage message = message(request, raw);
        long id = ledger.write(tables -> tables.messages().insert(message)).join();
        request.setAttribute(MESSAGE_ID, id);
        var answer = new ContentCachingResponseWrapper(response);
        chain.doFilter(new BufferedRequest(request, raw), answer);
        answered(id, answer);
        answer.copyBodyToResponse();
    }

    private void answered(long id, ContentCachingResponseWrapper answer) {
        byte[] body = answer.getContentAsByteArray();
        String status = Integer.toString(answer.getStatus());
        ledger.write(
                        tables -> {
                            tables.messages().answered(id, body, status);
                            return id;
                        })
                .join();
    }

    /** The query stays out of the type: it may hold an identifier. */
    private NewMessage message(HttpServletRequest request, byte[] raw) {
        return new NewMessage(
                "fhir",
                request.getUserPrincipal() == null ? "" : request.getUserPrincipal().getName(),
                "",
                request.getMethod() + " " + request.getRequestURI(),
                sha256(raw),
                raw,
                clock.instant());
    }

    private static String sha256(byte[] raw) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(raw));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256", e);
        }
    }
}
