package org.roundsman.people;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/** Tells who stands behind a personal token, at the moment of its use. Blocks on the database. */
@ApplicationScoped
class TokenHolders {

    /** A write for each request would be too much. */
    private static final Duration NOTED_EVERY = Duration.ofMinutes(1);

    /** So long a token that is over stays in lists, for those who wonder why their program stopped. */
    private static final Duration KEPT = Duration.ofDays(90);

    private final Clock clock;

    TokenHolders(Clock clock) {
        this.clock = clock;
    }

    @Transactional
    TokenCheck check(String secret, String from) {
        PersonalToken token =
                PersonalToken.<PersonalToken>find("hash", Tokens.hash(secret)).firstResult();
        Instant now = clock.instant();
        if (token == null || token.account.disabled || token.account.mustChange) {
            return new TokenCheck.Unknown();
        }
        if (token.revokedAt != null) {
            return new TokenCheck.Revoked(token.revokedAt);
        }
        if (!now.isBefore(token.expiresAt)) {
            return new TokenCheck.Expired(token.expiresAt);
        }
        SignedIn person = SignedIn.of(token.account);
        Optional<Long> narrowed = Optional.ofNullable(token.customerId);
        if (narrowed.isPresent() && !person.scope().includes(narrowed.get())) {
            return new TokenCheck.Unknown(); // its person has become another customer's viewer since
        }
        note(token, from, now);
        return new TokenCheck.Good(
                narrowed.map(person::narrowedTo).orElse(person),
                new UsedToken(token.id, token.name, token.scopeSet(), narrowed));
    }

    private static void note(PersonalToken token, String from, Instant now) {
        boolean stale = token.usedAt == null || now.isAfter(token.usedAt.plus(NOTED_EVERY));
        if (stale || !token.usedFrom.equals(from)) {
            token.usedAt = now;
            token.usedFrom = from;
        }
    }

    @Scheduled(every = "24h", delayed = "10m", identity = "tokens-that-are-long-over")
    @Transactional
    void deleteOver() {
        Instant before = clock.instant().minus(KEPT);
        PersonalToken.delete("expiresAt < ?1 or revokedAt < ?1", before);
    }
}
