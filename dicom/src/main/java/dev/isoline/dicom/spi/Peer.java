package dev.isoline.dicom.spi;

import java.net.InetAddress;
import java.util.Optional;

/**
 * The other side of an association, as it presented itself.
 *
 * @param calling title of the requestor
 * @param called title of the acceptor
 * @param address where its connection comes from or goes to
 * @param implementationClass its Implementation Class UID, PS3.7 D.3.3.2; empty where it gave none
 * @param implementationVersion its Implementation Version Name; empty where it gave none
 * @param certificate subject of the certificate it showed and we trust, where the connection is
 *     secured and it showed one
 */
public record Peer(
        AeTitle calling,
        AeTitle called,
        InetAddress address,
        String implementationClass,
        String implementationVersion,
        Optional<String> certificate) {}
