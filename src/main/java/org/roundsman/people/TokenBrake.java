package org.roundsman.people;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.nio.ByteBuffer;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Slows an address down that sends wrong tokens. Guessing 256 bits is hopeless; this keeps a broken or hostile program
 * from using up log and database. Tokens that were good lately pass, so that nobody behind the same address suffers.
 * Thread-safe; keeps at most {@value #MOST} addresses.
 */
@ApplicationScoped
class TokenBrake {

    private static final Duration WINDOW = Duration.ofMinutes(1);
    private static final int MOST = 10_000;

    /** Wrong tokens since the window began. */
    private record Wrong(Instant began, int count) {}

    private final Map<String, Wrong> wrong = new ConcurrentHashMap<>();
    private final Set<ByteBuffer> good = ConcurrentHashMap.newKeySet();
    private final int allowed;
    private final Clock clock;

    @Inject
    TokenBrake(PeopleSettings settings, Clock clock) {
        this(settings.tokenFailures(), clock);
    }

    TokenBrake(int allowed, Clock clock) {
        this.allowed = allowed;
        this.clock = clock;
    }

    /** How many seconds this address has to wait before an unknown token of it is looked at; 0 = not at all. */
    long waits(String address, String token) {
        Wrong now = wrong.get(address);
        if (now == null || now.count < allowed || good.contains(key(token))) {
            return 0;
        }
        Duration left = Duration.between(clock.instant(), now.began.plus(WINDOW));
        return left.isNegative() || left.isZero() ? 0 : left.toSeconds() + 1;
    }

    /** Counts a wrong token; whether it was the one that brought the brake on. */
    boolean failed(String address, String token) {
        good.remove(key(token));
        if (wrong.size() >= MOST) {
            wrong.clear();
        }
        Instant now = clock.instant();
        return wrong.merge(
                                address,
                                new Wrong(now, 1),
                                (old, one) -> now.isBefore(old.began.plus(WINDOW))
                                        ? new Wrong(old.began, old.count + 1)
                                        : one)
                        .count
                == allowed;
    }

    void worked(String token) {
        if (good.size() >= MOST) {
            good.clear();
        }
        good.add(key(token));
    }

    private static ByteBuffer key(String token) {
        return ByteBuffer.wrap(Tokens.hash(token));
    }
}
