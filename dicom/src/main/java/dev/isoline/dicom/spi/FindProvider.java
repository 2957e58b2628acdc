package dev.isoline.dicom.spi;

import java.io.IOException;

/** Answers C-FIND, PS3.7 9.1.2 and PS3.4 K.4.1. */
@FunctionalInterface
public interface FindProvider {

    /**
     * Sends the matches of a request one by one through {@code pending} and then says how it ended.
     *
     * @return the status of the final response: {@link Status#SUCCESS}, {@link Status#CANCEL} where
     *     {@code pending} said so, or a failure
     * @throws Refused to end it with the status in there; any other exception is answered as C001H
     */
    Status find(FindRequest request, Pending pending) throws IOException;
}
