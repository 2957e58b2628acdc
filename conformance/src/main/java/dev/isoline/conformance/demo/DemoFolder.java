package dev.isoline.conformance.demo;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Where everything of a demo lies. Names say what a file is and hold no patient detail. */
record DemoFolder(Path root) {

    private static final String INDEX = "README.txt";

    /** Sub-folders the gateway and its partners use. */
    private static final List<String> FOLDERS =
            List.of(
                    "harrow-bay",
                    "sable-point",
                    "tern-street",
                    "worklist",
                    "archive",
                    "archive-dicom",
                    "recordings",
                    "inbox");

    /**
     * An empty folder; what an earlier demo left is removed.
     *
     * @throws DemoFailure when it holds something else
     */
    static DemoFolder prepare(Path root) throws IOException, DemoFailure {
        if (Files.isDirectory(root) && !isEmpty(root)) {
            if (!Files.exists(root.resolve(INDEX))) {
                throw new DemoFailure(
                        "The folder "
                                + root
                                + " holds something that is not from a demo;"
                                + " give another one with --out.");
            }
            remove(root);
        }
        var folder = new DemoFolder(root.toAbsolutePath().normalize());
        for (String name : FOLDERS) {
            Files.createDirectories(folder.path(name));
        }
        Files.createDirectories(folder.path("gateway/data"));
        try (var index = DemoFolder.class.getResourceAsStream("index.txt")) {
            Files.copy(index, folder.path(INDEX));
        }
        return folder;
    }

    private static boolean isEmpty(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.findAny().isEmpty();
        }
    }

    private static void remove(Path root) throws IOException {
        try (Stream<Path> files = Files.walk(root)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    /**
     * @param name with slashes, relative to the folder
     */
    Path path(String name) {
        return root.resolve(name);
    }

    Path write(String name, byte[] content) throws IOException {
        Path file = path(name);
        Files.createDirectories(file.getParent());
        return Files.write(file, content);
    }

    Path write(String name, String content) throws IOException {
        return write(name, content.getBytes(StandardCharsets.UTF_8));
    }
}
