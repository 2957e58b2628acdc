package dev.isoline.delivery;

import dev.isoline.ledger.DeliveryTable.NewDelivery;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * Copies files into a folder. A file appears there whole, synced and under its final name, which is
 * the name it has with us: the SOP Instance UID of a DICOM object.
 */
public final class FolderDestination implements Destination {

    private static final int PARALLEL = 2;

    private final Path folder;
    private final Path dataDir;

    /**
     * @param dataDir what the paths of deliveries are relative to
     */
    public FolderDestination(Path folder, Path dataDir) {
        this.folder = folder;
        this.dataDir = dataDir;
    }

    @Override
    public int parallel() {
        return PARALLEL;
    }

    @Override
    public Verdict send(NewDelivery delivery) throws IOException {
        if (delivery.path() == null) {
            return Verdict.refused("a folder takes files only");
        }
        Optional<Path> source = ObjectFile.path(delivery, dataDir);
        if (source.isEmpty()) {
            return Verdict.refused("the file to deliver is not in the data folder");
        }
        Files.createDirectories(folder);
        return place(source.get(), folder.resolve(source.get().getFileName()));
    }

    private static Verdict place(Path source, Path target) throws IOException {
        if (!Files.exists(target)) {
            copy(source, target);
            return Verdict.delivered("copied, " + Files.size(target) + " bytes");
        }
        return Files.mismatch(source, target) < 0
                ? Verdict.delivered("was there already, " + Files.size(target) + " bytes")
                : Verdict.refused("another file of this name is there");
    }

    private static void copy(Path source, Path target) throws IOException {
        Path part = target.resolveSibling("." + target.getFileName() + ".part");
        Files.copy(source, part, StandardCopyOption.REPLACE_EXISTING);
        sync(part, StandardOpenOption.WRITE);
        Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
        sync(target.getParent(), StandardOpenOption.READ);
    }

    private static void sync(Path path, StandardOpenOption access) throws IOException {
        try (var channel = FileChannel.open(path, access)) {
            channel.force(true);
        }
    }
}
