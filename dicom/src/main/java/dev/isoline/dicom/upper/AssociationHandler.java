package dev.isoline.dicom.upper;

import dev.isoline.dicom.spi.AssociationObserver;
import dev.isoline.dicom.spi.Role;
import java.io.IOException;
import java.util.Optional;

/** The local user behind a {@link Server}. */
public interface AssociationHandler {

    /** The roles a requestor may have for a SOP class; empty where it is not served. */
    Optional<Role> supported(String abstractSyntax);

    /**
     * Serves an association until its peer releases it.
     *
     * @throws IOException what ended it otherwise
     */
    void serve(AcceptedAssociation association) throws IOException;

    AssociationObserver observer();
}
