package dev.isoline.conformance.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;

/** The credentials file the gateway makes at its first start: one {@code name:token} a line. */
record Credentials(Map<String, String> tokens) {

    static Credentials read(Path file) throws IOException {
        var tokens = new HashMap<String, String>();
        for (String line : Files.readAllLines(file)) {
            int colon = line.indexOf(':');
            if (colon > 0) {
                tokens.put(line.substring(0, colon).strip(), line.substring(colon + 1).strip());
            }
        }
        return new Credentials(tokens);
    }

    String of(String name) throws DemoFailure {
        String token = tokens.get(name);
        if (token == null) {
            throw new DemoFailure("The gateway's credentials file has no line for " + name + ".");
        }
        return token;
    }
}
