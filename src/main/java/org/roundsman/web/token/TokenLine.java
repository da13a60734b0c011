package org.roundsman.web.token;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.roundsman.people.HeldToken;
import org.roundsman.people.TokenScope;

/**
 * A token in a list, in words.
 *
 * @param used when and from where it was used last
 * @param state how long it is good, or since when it is not
 */
record TokenLine(
        long id, String person, String name, String may, String customer, String used, String state, boolean good) {

    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern(
                    "d MMM yyyy, HH:mm 'UTC'", Locale.ENGLISH)
            .withZone(ZoneOffset.UTC);

    static List<TokenLine> of(List<HeldToken> tokens, Map<Long, String> customers, Instant now) {
        return tokens.stream().map(token -> of(token, customers, now)).toList();
    }

    private static TokenLine of(HeldToken token, Map<Long, String> customers, Instant now) {
        return new TokenLine(
                token.id(),
                token.person(),
                token.name(),
                token.scopes().stream().sorted().map(TokenScope::word).collect(Collectors.joining(", ")),
                token.customerId().map(id -> customers.getOrDefault(id, "")).orElse(""),
                used(token),
                state(token, now),
                token.good(now));
    }

    private static String used(HeldToken token) {
        Optional<String> when = token.usedAt().map(MINUTE::format);
        String from = token.usedFrom().isEmpty() ? "" : " from " + token.usedFrom();
        return when.map(at -> at + from).orElse("never used");
    }

    private static String state(HeldToken token, Instant now) {
        if (token.revokedAt().isPresent()) {
            return "revoked " + MINUTE.format(token.revokedAt().get());
        }
        return (now.isBefore(token.expiresAt()) ? "good until " : "ran out ") + MINUTE.format(token.expiresAt());
    }
}
