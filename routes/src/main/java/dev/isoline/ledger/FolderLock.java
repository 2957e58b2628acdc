package dev.isoline.ledger;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Keeps a second process out of the data folder; the system lets go of it when we die. */
final class FolderLock implements AutoCloseable {

    private final FileChannel channel;

    private FolderLock(FileChannel channel) {
        this.channel = channel;
    }

    static FolderLock take(Path folder) {
        try {
            OwnerOnly.createFolder(folder);
            Path file = folder.resolve("isoline.lock");
            OwnerOnly.createFile(file);
            return lock(FileChannel.open(file, StandardOpenOption.WRITE));
        } catch (IOException e) {
            throw new LedgerException("The data folder cannot be made or written.", e);
        }
    }

    private static FolderLock lock(FileChannel channel) throws IOException {
        boolean locked = false;
        try {
            locked = channel.tryLock() != null;
        } catch (OverlappingFileLockException e) {
            // Held by this very process.
        }
        if (!locked) {
            channel.close();
            throw new LedgerException("The data folder is in use by another gateway.");
        }
        return new FolderLock(channel);
    }

    @Override
    public void close() {
        try {
            channel.close();
        } catch (IOException e) {
            throw new LedgerException("The data folder's lock could not be let go.", e);
        }
    }
}
