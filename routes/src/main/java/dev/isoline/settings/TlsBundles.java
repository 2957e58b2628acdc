package dev.isoline.settings;

import dev.isoline.dicom.spi.Tls;
import java.util.List;
import java.util.Optional;
import org.springframework.boot.ssl.NoSuchSslBundleException;
import org.springframework.boot.ssl.SslBundles;
import org.springframework.stereotype.Component;

/** Keys and certificates by the name of their {@code spring.ssl.bundle}. */
@Component
public class TlsBundles {

    private final SslBundles bundles;

    public TlsBundles(SslBundles bundles) {
        this.bundles = bundles;
    }

    /**
     * @param name empty: without TLS
     * @param mutual a listener asks for the caller's certificate
     * @throws IllegalArgumentException when there is no such bundle
     */
    public Optional<Tls> dicom(String name, boolean mutual) {
        if (name.isEmpty()) {
            return Optional.empty();
        }
        try {
            var managers = bundles.getBundle(name).getManagers();
            return Optional.of(
                    new Tls(
                            List.of(managers.getKeyManagers()),
                            List.of(managers.getTrustManagers()),
                            mutual));
        } catch (NoSuchSslBundleException e) {
            throw new IllegalArgumentException("there is no spring.ssl.bundle " + name, e);
        }
    }
}
