package dev.isoline.dicom.peer;

import dev.isoline.dicom.spi.Tls;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.CertificateFactory;

/**
 * A self-signed certificate and its key, made by openssl: PEM for DCMTK, key store for Java.
 *
 * @param key private key, PEM
 * @param certificate PEM
 * @param store the same, PKCS12, password {@code secret}
 */
public record Certificates(Path key, Path certificate, Path store) {

    private static final char[] PASSWORD = "secret".toCharArray();

    /** Makes one, valid for two days. */
    public static Certificates of(Path folder, String name) throws IOException {
        String openssl = Checker.program("openssl", "openssl");
        var made =
                new Certificates(
                        folder.resolve(name + ".key"),
                        folder.resolve(name + ".crt"),
                        folder.resolve(name + ".p12"));
        // spotless:off
        Tool.run(openssl, "req", "-x509", "-newkey", "rsa:2048", "-nodes", "-days", 2, "-subj", "/CN=" + name,
                "-keyout", made.key, "-out", made.certificate).succeeded();
        Tool.run(openssl, "pkcs12", "-export", "-inkey", made.key, "-in", made.certificate, "-out", made.store,
                "-passout", "pass:secret").succeeded();
        // spotless:on
        return made;
    }

    /** Shows this certificate and trusts the other one; mutual. */
    public Tls trusting(Certificates other) throws IOException, GeneralSecurityException {
        KeyStore identity = KeyStore.getInstance("PKCS12");
        try (var in = Files.newInputStream(store)) {
            identity.load(in, PASSWORD);
        }
        KeyStore trusted = KeyStore.getInstance("PKCS12");
        trusted.load(null, null);
        try (var in = Files.newInputStream(other.certificate)) {
            trusted.setCertificateEntry(
                    "peer", CertificateFactory.getInstance("X.509").generateCertificate(in));
        }
        return Tls.of(identity, PASSWORD, trusted, true);
    }
}
