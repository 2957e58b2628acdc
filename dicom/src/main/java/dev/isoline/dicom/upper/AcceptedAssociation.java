package dev.isoline.dicom.upper;

import dev.isoline.dicom.spi.AcceptedContext;
import dev.isoline.dicom.spi.Peer;
import java.util.Map;

/**
 * An association a {@link Server} accepted.
 *
 * @param layer its upper layer service
 * @param peer its requestor
 * @param contexts accepted presentation contexts by id
 * @param peerMaxPdu maximum length the requestor announced, 0 no limit
 */
public record AcceptedAssociation(
        UpperLayer layer, Peer peer, Map<Integer, AcceptedContext> contexts, int peerMaxPdu) {}
