package dev.isoline.dicom;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Data sets to files and back, as tests need them: everything in memory. */
public final class Files10 {

    public static final ReadLimits ALL = new ReadLimits(64, 1_000_000, Integer.MAX_VALUE, 1L << 40);

    private Files10() {}

    public static Part10 read(Path file) throws IOException {
        try (var channel = FileChannel.open(file)) {
            return Part10.read(channel, ALL);
        }
    }

    public static void write(Path file, TransferSyntax syntax, DataSet dataSet) throws IOException {
        try (var channel = create(file)) {
            Part10.write(channel, syntax, dataSet);
        }
    }

    public static FileChannel create(Path file) throws IOException {
        return FileChannel.open(
                file,
                StandardOpenOption.CREATE,
                StandardOpenOption.WRITE,
                StandardOpenOption.TRUNCATE_EXISTING);
    }

    /** A data set alone, without preamble and group 0002. */
    public static byte[] bytes(Path folder, TransferSyntax syntax, DataSet dataSet)
            throws IOException {
        Path file = folder.resolve("data-set");
        try (var channel = create(file)) {
            new DataSetWriter(channel, syntax).write(dataSet);
        }
        return Files.readAllBytes(file);
    }

    public static DataSet read(Path folder, TransferSyntax syntax, byte[] bytes)
            throws IOException {
        Path file = Files.write(folder.resolve("data-set"), bytes);
        try (var channel = FileChannel.open(file)) {
            return DataSetReader.read(channel, syntax, ALL);
        }
    }
}
