package dev.isoline.app;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Collection;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Who may use the HTTP APIs: a file of {@code name:token} lines that only its owner can read, made
 * at the first start and kept from then on.
 */
public final class Credentials {

    private static final Logger LOG = LoggerFactory.getLogger(Credentials.class);
    private static final Set<PosixFilePermission> OWNER_ONLY =
            PosixFilePermissions.fromString("rw-------");
    private static final int TOKEN_BYTES = 32;

    private final Map<String, byte[]> tokens;

    private Credentials(Map<String, String> tokens) {
        this.tokens =
                tokens.entrySet().stream()
                        .collect(
                                Collectors.toUnmodifiableMap(
                                        Map.Entry::getKey, e -> utf8(e.getValue())));
    }

    /**
     * Reads the file and adds a random token for each name it does not have yet.
     *
     * @throws UncheckedIOException when it cannot be read or written
     */
    public static Credentials open(Path file, Collection<String> names) {
        try {
            Map<String, String> tokens = read(file);
            int before = tokens.size();
            names.forEach(name -> tokens.computeIfAbsent(name, n -> newToken()));
            if (tokens.size() > before) {
                write(file, tokens);
            } else {
                Files.setPosixFilePermissions(file, OWNER_ONLY);
            }
            LOG.info("Credentials of the HTTP APIs are in {}", file.toAbsolutePath());
            return new Credentials(tokens);
        } catch (IOException e) {
            throw new UncheckedIOException("The credentials file " + file + " cannot be used", e);
        }
    }

    /** Takes the same time however much of the token is right. */
    public boolean accept(String name, String token) {
        byte[] expected = tokens.getOrDefault(name, new byte[0]);
        return MessageDigest.isEqual(expected, utf8(token)) && expected.length > 0;
    }

    private static Map<String, String> read(Path file) throws IOException {
        var tokens = new LinkedHashMap<String, String>();
        if (Files.exists(file)) {
            for (String line : Files.readAllLines(file)) {
                int colon = line.indexOf(':');
                if (colon > 0) {
                    tokens.put(line.substring(0, colon), line.substring(colon + 1).strip());
                }
            }
        }
        return tokens;
    }

    /** Beside it first, then in its place: a crash leaves the old file or the new one. */
    private static void write(Path file, Map<String, String> tokens) throws IOException {
        Files.createDirectories(file.toAbsolutePath().getParent());
        Path fresh = file.resolveSibling(file.getFileName() + ".new");
        Files.deleteIfExists(fresh);
        Files.createFile(fresh, PosixFilePermissions.asFileAttribute(OWNER_ONLY));
        String lines =
                tokens.entrySet().stream()
                        .map(e -> e.getKey() + ":" + e.getValue() + "\n")
                        .collect(Collectors.joining());
        Files.writeString(fresh, lines);
        Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE);
    }

    private static String newToken() {
        var bytes = new byte[TOKEN_BYTES];
        new SecureRandom().nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
