package org.roundsman.people;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Which passwords are good enough. */
final class PasswordRules {

    static final int SHORTEST = 8;
    /** bcrypt looks at no more than 72 octets: what lies beyond would be silently worthless. */
    static final int LONGEST_OCTETS = 72;

    private static final Set<String> COMMON = common();

    private PasswordRules() {}

    /** What is wrong with the password of that account, in plain words; empty when nothing is. */
    static Optional<String> fault(String password, String name) {
        if (password.codePointCount(0, password.length()) < SHORTEST) {
            return Optional.of("A password has at least " + SHORTEST + " characters.");
        }
        if (password.getBytes(StandardCharsets.UTF_8).length > LONGEST_OCTETS) {
            return Optional.of("A password has at most " + LONGEST_OCTETS + " bytes.");
        }
        if (password.chars().anyMatch(Character::isISOControl)) {
            return Optional.of("A password has no control characters.");
        }
        String plain = password.toLowerCase(Locale.ROOT);
        if (name.length() >= 4 && plain.contains(name.toLowerCase(Locale.ROOT))) {
            return Optional.of("A password does not contain the sign-in name.");
        }
        if (COMMON.contains(plain) || plain.chars().distinct().count() < 4) {
            return Optional.of("This password is too easy to guess.");
        }
        return Optional.empty();
    }

    private static Set<String> common() {
        try (InputStream file = PasswordRules.class.getResourceAsStream("/people/common-passwords.txt")) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .collect(Collectors.toUnmodifiableSet());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
