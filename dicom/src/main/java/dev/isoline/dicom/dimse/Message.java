package dev.isoline.dicom.dimse;

/**
 * A message received, whose data set, if there is one, was not yet read.
 *
 * @param contextId its presentation context
 * @param command its command set
 */
record Message(int contextId, CommandSet command) {}
