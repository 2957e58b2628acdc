package dev.isoline.dicom.spi;

import dev.isoline.dicom.TransferSyntax;

/**
 * A C-STORE request before its data set, PS3.7 table 9.3-1.
 *
 * @param peer who sends
 * @param instance Affected SOP Class UID and Affected SOP Instance UID, both valid UIDs
 * @param transferSyntax how the data set is encoded
 */
public record StoreRequest(Peer peer, SopReference instance, TransferSyntax transferSyntax) {}
