package dev.isoline.dicom.spi;

import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.util.List;
import javax.net.ssl.KeyManager;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManager;
import javax.net.ssl.TrustManagerFactory;

/**
 * How a connection is secured, PS3.15 B.9 (BCP 195): TLS 1.2 or 1.3 with the cipher suites the JDK
 * allows by default.
 *
 * @param keys our certificates; none where we only check the other side's
 * @param trusted whose certificates we accept
 * @param mutual a listener asks for the caller's certificate and refuses the call without one
 */
public record Tls(List<KeyManager> keys, List<TrustManager> trusted, boolean mutual) {

    /** Protocols offered and accepted. */
    public static final List<String> PROTOCOLS = List.of("TLSv1.3", "TLSv1.2");

    public Tls {
        keys = List.copyOf(keys);
        trusted = List.copyOf(trusted);
    }

    /**
     * From key stores.
     *
     * @param identity our key and certificate
     * @param password of the key
     * @param authorities certificates we trust
     */
    public static Tls of(KeyStore identity, char[] password, KeyStore authorities, boolean mutual)
            throws GeneralSecurityException {
        var keys = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
        keys.init(identity, password);
        var trust = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
        trust.init(authorities);
        return new Tls(List.of(keys.getKeyManagers()), List.of(trust.getTrustManagers()), mutual);
    }

    /** A new context over these managers. */
    public SSLContext context() throws GeneralSecurityException {
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(keys.toArray(KeyManager[]::new), trusted.toArray(TrustManager[]::new), null);
        return context;
    }
}
