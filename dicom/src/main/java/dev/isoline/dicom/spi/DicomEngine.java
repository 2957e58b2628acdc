package dev.isoline.dicom.spi;

import java.io.IOException;
import java.util.List;
import java.util.ServiceLoader;

/**
 * An implementation of the DICOM upper layer (PS3.8) and of the message services (PS3.7) used here.
 *
 * <p>Engines are found by {@link ServiceLoader}. The built-in one is always there; another one on
 * the class path takes its place.
 */
public interface DicomEngine {

    /** What the configuration and the logs call it, such as {@code built-in}. */
    String name();

    /** True for the engine that comes with this toolkit. */
    default boolean builtIn() {
        return false;
    }

    /**
     * Opens an association as requestor, PS3.8 7.1.
     *
     * @throws Rejection where the peer refuses it
     * @throws Abort where the peer or this side ends it during negotiation
     * @throws java.net.SocketTimeoutException where the peer does not answer in time
     */
    Association associate(Remote remote, Offer offer) throws IOException;

    /**
     * Opens an association on which results of storage commitment may arrive, PS3.4 J.3.3.
     *
     * @param results takes an N-EVENT-REPORT that comes on this association; see {@link
     *     Association#awaitCommitment}
     */
    Association associate(Remote remote, Offer offer, CommitmentResults results) throws IOException;

    /**
     * Listens for associations to one application entity until the listener is closed.
     *
     * @throws IOException where the port cannot be had
     */
    Listener listen(Local local, Services services) throws IOException;

    /** The engine to use: a foreign one where one is present, else the built-in one. */
    static DicomEngine find() {
        List<DicomEngine> engines = all();
        return engines.stream()
                .filter(e -> !e.builtIn())
                .findFirst()
                .orElseGet(() -> engines.get(0));
    }

    /**
     * The engine of that name.
     *
     * @throws IllegalArgumentException where none has it; the message names those there are
     */
    static DicomEngine named(String name) {
        List<DicomEngine> engines = all();
        return engines.stream()
                .filter(e -> e.name().equals(name))
                .findFirst()
                .orElseThrow(() -> unknown(name, engines));
    }

    /** Every engine on the class path. */
    static List<DicomEngine> all() {
        return ServiceLoader.load(DicomEngine.class, DicomEngine.class.getClassLoader()).stream()
                .map(ServiceLoader.Provider::get)
                .toList();
    }

    private static IllegalArgumentException unknown(String name, List<DicomEngine> engines) {
        List<String> names = engines.stream().map(DicomEngine::name).toList();
        return new IllegalArgumentException("no DICOM engine " + name + "; there are " + names);
    }
}
