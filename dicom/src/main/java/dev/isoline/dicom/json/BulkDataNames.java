package dev.isoline.dicom.json;

import dev.isoline.dicom.Element;
import java.util.Optional;

/** Which values a JSON names by BulkDataURI instead of holding them, PS3.18 F.2.6. */
public interface BulkDataNames {

    /** The URI of a value; empty where it goes in line. */
    Optional<String> uri(Element element);

    /** Everything in line. */
    BulkDataNames NONE = element -> Optional.empty();
}
