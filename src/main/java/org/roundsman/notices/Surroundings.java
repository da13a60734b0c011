package org.roundsman.notices;

import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.function.BooleanSupplier;
import javax.sql.DataSource;
import org.roundsman.notices.text.Texts;
import org.roundsman.system.Transaction;

/**
 * What notices work with.
 *
 * @param mailOpen whether mails can be sent at all
 */
record Surroundings(
        DataSource database,
        AlarmSource alarms,
        NeededHours hours,
        BooleanSupplier mailOpen,
        Texts texts,
        NoticesConfig config,
        Clock clock) {

    /** Whether a site needs its Wi-Fi at that time. */
    @FunctionalInterface
    interface NeededHours {
        boolean contain(long siteId, Instant at);
    }

    Instant now() {
        return clock.instant();
    }

    Instant giveUp(Instant from) {
        return from.plus(config.giveUpAfter());
    }

    /** Whole or not at all. */
    <T> T whole(Transaction.Work<T> work) {
        return whole(database, work);
    }

    static <T> T whole(DataSource database, Transaction.Work<T> work) {
        try {
            return Transaction.run(database, work);
        } catch (SQLException e) {
            throw new IllegalStateException("Notices cannot be read or stored: " + e.getMessage(), e);
        }
    }
}
