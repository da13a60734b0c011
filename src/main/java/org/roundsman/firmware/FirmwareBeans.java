package org.roundsman.firmware;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import javax.sql.DataSource;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmDesk;
import org.roundsman.firmware.upgrade.Comparing;
import org.roundsman.firmware.upgrade.Noticing;
import org.roundsman.firmware.watch.SiteAlarms;
import org.roundsman.rules.RuleBook;

/** Gives the watch its tools. */
@ApplicationScoped
class FirmwareBeans {

    @Produces
    @Singleton
    SiteAlarms siteAlarms(FirmwareStates states, AlarmBook book, AlarmDesk desk, RuleBook rules) {
        return new SiteAlarms(states, book, desk, rules::current);
    }

    @Produces
    @Singleton
    Noticing noticing(DataSource database) {
        return new Noticing(database);
    }

    @Produces
    @Singleton
    Comparing comparing(DataSource database) {
        return new Comparing(database);
    }
}
