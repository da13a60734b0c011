package org.roundsman.people;

import io.quarkus.elytron.security.common.BcryptUtil;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.security.SecureRandom;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/** Hashing and checking of passwords, and places for a few who sign in at a time. */
@ApplicationScoped
class Passwords {

    /** No 0, 1, i, l or o: it is read off a screen and typed. 32 letters give 5 bits each. */
    private static final String LETTERS = "23456789abcdefghjkmnpqrstuvwxyz+";

    private static final int AT_ONCE = 4;

    private final SecureRandom random = new SecureRandom();
    private final Semaphore places = new Semaphore(AT_ONCE, true);
    private final int cost;
    private final String nobodysHash;

    @Inject
    Passwords(PeopleSettings settings) {
        this(settings.bcryptCost());
    }

    /** With a bcrypt cost, 4 to 31: each step doubles the time. */
    Passwords(int cost) {
        this.cost = cost;
        nobodysHash = BcryptUtil.bcryptHash(random(), cost);
    }

    String hash(String password) {
        return BcryptUtil.bcryptHash(password, cost);
    }

    /** Whether the password fits. A null hash, of an account that does not exist, takes the same time and never fits. */
    boolean fits(String password, String hash) {
        boolean fits = BcryptUtil.matches(password, hash == null ? nobodysHash : hash);
        return fits && hash != null;
    }

    /**
     * Does what hashes a password, a few at a time: a flood of sign-ins must leave processor and database connections to
     * everybody else. So take a place before the first question to the database.
     *
     * @throws TooBusy when too many are waiting
     */
    <T> T oneOfFew(Supplier<T> work) {
        takePlace();
        try {
            return work.get();
        } finally {
            places.release();
        }
    }

    private void takePlace() {
        try {
            if (!places.tryAcquire(3, TimeUnit.SECONDS)) {
                throw new TooBusy();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new TooBusy();
        }
    }

    /** A password of 80 random bits, in groups of four. */
    String random() {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 16; i++) {
            text.append(i > 0 && i % 4 == 0 ? "-" : "").append(LETTERS.charAt(random.nextInt(LETTERS.length())));
        }
        return text.toString();
    }

    /** Too many people sign in at this moment. */
    static final class TooBusy extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }
}
