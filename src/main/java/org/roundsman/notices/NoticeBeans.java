package org.roundsman.notices;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.Instant;
import javax.sql.DataSource;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Sites;
import org.roundsman.mail.MailServer;
import org.roundsman.notices.text.Links;
import org.roundsman.notices.text.Texts;
import org.roundsman.notices.thread.OwnHours;

/** What notices work with, from the container. */
@ApplicationScoped
class NoticeBeans {

    private final NoticesConfig config;
    private final MailServer mail;
    private final Sites sites;

    @Inject
    NoticeBeans(NoticesConfig config, MailServer mail, Sites sites) {
        this.config = config;
        this.mail = mail;
        this.sites = sites;
    }

    NoticesConfig config() {
        return config;
    }

    boolean mailOpen() {
        return mail.state().ready();
    }

    @Produces
    @Singleton
    Texts texts(@ConfigProperty(name = "roundsman.demo.enabled", defaultValue = "false") boolean invented) {
        return new Texts(new Links(config.baseUrl()), invented);
    }

    @Produces
    @Singleton
    Surroundings surroundings(DataSource database, AlarmSource alarms, Texts texts, Clock clock) {
        return new Surroundings(database, alarms, this::needed, this::mailOpen, texts, config, clock);
    }

    /** A site that is gone needs nothing. */
    private boolean needed(long site, Instant at) {
        return sites.find(CustomerScope.everyone(), site)
                .map(found -> new OwnHours(found.zone(), found.hours).contain(at))
                .orElse(false);
    }
}
