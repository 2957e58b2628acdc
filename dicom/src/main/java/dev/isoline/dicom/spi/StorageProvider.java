package dev.isoline.dicom.spi;

import dev.isoline.dicom.DataSet;
import java.io.IOException;
import java.nio.file.Path;

/**
 * Takes objects by C-STORE, PS3.7 9.1.1. The engine streams each one to disk; no object is in
 * memory as a whole.
 */
public interface StorageProvider {

    /**
     * A request arrived; its data set has not. The engine creates the file and writes a Part 10
     * file into it as the bytes arrive, in the transfer syntax they come in.
     *
     * @return a path that does not exist yet
     * @throws Refused to refuse the object before it is received
     */
    Path file(StoreRequest request) throws IOException;

    /**
     * The object is complete: the file is whole and closed but not forced to disk, and from now on
     * this provider's.
     *
     * @param head its data set; long values are read from the file, during this call only
     * @return what the sender is told; whoever answers {@link Status#SUCCESS} made the object
     *     durable before
     */
    Status stored(StoreRequest request, Path file, DataSet head) throws IOException;

    /**
     * The object did not arrive whole, or is no readable data set (the sender is told C000H); the
     * engine has removed the file.
     */
    default void failed(StoreRequest request, IOException cause) {}
}
