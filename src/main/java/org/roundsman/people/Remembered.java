package org.roundsman.people;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.jboss.logging.Logger;

/**
 * Who holds which token, remembered for a few seconds so that a page with its pictures asks the database once. While
 * the database does not answer, those who were known shortly before stay signed in: they are the ones who must see it.
 */
@ApplicationScoped
class Remembered {

    private static final Logger LOG = Logger.getLogger(Remembered.class);
    private static final int MOST = 10_000;
    private static final Duration WITHOUT_DATABASE = Duration.ofMinutes(10);

    private record Entry(Optional<SignedIn> person, Instant at) {}

    private final Map<String, Entry> entries = new ConcurrentHashMap<>();
    private final Sessions sessions;
    private final Duration fresh;
    private final Clock clock;

    Remembered(Sessions sessions, PeopleSettings settings, Clock clock) {
        this.sessions = sessions;
        this.fresh = settings.remembered();
        this.clock = clock;
    }

    Optional<SignedIn> holder(String token) {
        Instant now = clock.instant();
        Entry known = entries.get(token);
        if (known != null && now.isBefore(known.at.plus(fresh))) {
            return known.person;
        }
        return look(token, known, now);
    }

    private Optional<SignedIn> look(String token, Entry known, Instant now) {
        try {
            Optional<SignedIn> person = sessions.holder(token);
            remember(token, new Entry(person, now));
            return person;
        } catch (RuntimeException e) {
            if (known == null || now.isAfter(known.at.plus(WITHOUT_DATABASE))) {
                throw e;
            }
            LOG.warnf("A sign-in could not be looked up, the answer of %s is used: %s", known.at, e.getMessage());
            return known.person;
        }
    }

    private void remember(String token, Entry entry) {
        if (entries.size() >= MOST) {
            entries.clear();
        }
        entries.put(token, entry);
    }

    /** After a sign-in ended or an account changed: the next request asks the database. */
    void forget() {
        entries.clear();
    }
}
