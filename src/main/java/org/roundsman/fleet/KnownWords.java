package org.roundsman.fleet;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** Words that anybody tries first as a community or a password: common practice, no source. */
final class KnownWords {

    private static final String FILE = "fleet/known-words.txt";
    private static final Set<String> WORDS = read();

    private KnownWords() {}

    static boolean has(String secret) {
        return WORDS.contains(secret.strip().toLowerCase(Locale.ROOT));
    }

    private static Set<String> read() {
        try (InputStream in = KnownWords.class.getClassLoader().getResourceAsStream(FILE)) {
            if (in == null) {
                throw new IllegalStateException(FILE + " is missing from the program");
            }
            return new BufferedReader(new InputStreamReader(in, UTF_8))
                    .lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .collect(Collectors.toUnmodifiableSet());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
