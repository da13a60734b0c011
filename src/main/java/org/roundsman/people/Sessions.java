package org.roundsman.people;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/** Sign-ins in the database. */
@ApplicationScoped
class Sessions {

    /** A write for each request would be too much; the idle time is measured in hours. */
    private static final Duration NOTED_EVERY = Duration.ofMinutes(1);

    private final PeopleSettings settings;
    private final Clock clock;

    Sessions(PeopleSettings settings, Clock clock) {
        this.settings = settings;
        this.clock = clock;
    }

    @Transactional
    Optional<SignedIn> holder(String token) {
        SignIn signIn = SignIn.findById(Tokens.hash(token));
        Instant now = clock.instant();
        if (signIn == null || over(signIn, now) || signIn.account.disabled) {
            return Optional.empty();
        }
        if (now.isAfter(signIn.seenAt.plus(NOTED_EVERY))) {
            signIn.seenAt = now;
        }
        return Optional.of(SignedIn.of(signIn.account));
    }

    private boolean over(SignIn signIn, Instant now) {
        return now.isAfter(signIn.seenAt.plus(settings.idle()))
                || now.isAfter(signIn.startedAt.plus(settings.longest()));
    }

    @Scheduled(every = "1h", delayed = "5m", identity = "sign-ins-that-ran-out")
    @Transactional
    void deleteOver() {
        Instant now = clock.instant();
        SignIn.delete("seenAt < ?1 or startedAt < ?2", now.minus(settings.idle()), now.minus(settings.longest()));
    }
}
