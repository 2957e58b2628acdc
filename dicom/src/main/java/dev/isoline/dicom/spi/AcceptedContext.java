package dev.isoline.dicom.spi;

import dev.isoline.dicom.TransferSyntax;

/**
 * A presentation context both sides agreed on.
 *
 * @param abstractSyntax a SOP class
 * @param transferSyntax how its data sets are encoded
 * @param role what the requestor is
 */
public record AcceptedContext(String abstractSyntax, TransferSyntax transferSyntax, Role role) {}
