package dev.isoline.ecgdicom.module;

import dev.isoline.ecgdicom.OrderContext;
import dev.isoline.ecgdicom.PdfDocument;
import java.time.OffsetDateTime;
import java.util.Optional;

/** All that the modules of an Encapsulated PDF object are made from. */
public record DocumentObject(
        OrderContext order,
        String sopClassUid,
        String sopInstanceUid,
        Series series,
        int number,
        PdfDocument document)
        implements CompositeObject {

    @Override
    public Optional<OffsetDateTime> begins() {
        return document.created().or(document::recorded);
    }

    /** A PDF file does not name the device that made it. */
    @Override
    public String equipment() {
        return "";
    }
}
