package dev.isoline.dicom.spi;

import dev.isoline.dicom.DataSet;

/**
 * A C-FIND request, PS3.7 table 9.3-3.
 *
 * @param peer who asks
 * @param sopClass Affected SOP Class UID
 * @param keys the identifier: matching keys and return keys
 */
public record FindRequest(Peer peer, String sopClass, DataSet keys) {}
