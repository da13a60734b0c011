package org.roundsman.people;

import java.time.Duration;
import java.time.Instant;

/** When repeated wrong passwords lock an account. A lock that has run out starts the count afresh. */
record Lockout(int failuresAllowed, Duration lockedFor) {

    boolean locked(Account account, Instant now) {
        return account.lockedUntil != null && now.isBefore(account.lockedUntil);
    }

    void failed(Account account, Instant now) {
        if (account.lockedUntil != null) {
            clear(account);
        }
        account.failures++;
        if (account.failures >= failuresAllowed) {
            account.lockedUntil = now.plus(lockedFor);
        }
    }

    void clear(Account account) {
        account.failures = 0;
        account.lockedUntil = null;
    }
}
