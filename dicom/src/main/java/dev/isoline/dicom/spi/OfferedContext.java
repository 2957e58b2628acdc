package dev.isoline.dicom.spi;

import dev.isoline.dicom.TransferSyntax;
import java.util.List;

/**
 * A presentation context as the requestor offers it, PS3.8 9.3.2.2.
 *
 * @param abstractSyntax a SOP class
 * @param transferSyntaxes in order of preference; the acceptor picks one
 * @param role what the requestor wants to be
 */
public record OfferedContext(
        String abstractSyntax, List<TransferSyntax> transferSyntaxes, Role role) {

    public OfferedContext {
        transferSyntaxes = List.copyOf(transferSyntaxes);
        if (transferSyntaxes.isEmpty()) {
            throw new IllegalArgumentException("a context offers at least one transfer syntax");
        }
    }
}
