package org.roundsman.people;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.transaction.Transactional;
import java.util.Optional;
import org.jboss.logging.Logger;

/** Makes one owner account when there is none: its password stands in the log once and is to be changed. */
@ApplicationScoped
class FirstStart {

    /** After everything else that starts, so that accounts made by the start-up itself count. */
    private static final int LATE = 10_000;

    private static final Logger LOG = Logger.getLogger(FirstStart.class);

    private final Accounts accounts;
    private final PeopleSettings settings;

    FirstStart(Accounts accounts, PeopleSettings settings) {
        this.accounts = accounts;
        this.settings = settings;
    }

    @Transactional
    void onStart(@Observes @Priority(LATE) StartupEvent started) {
        // Two instances that start on one empty database must not make two owners.
        Account.getEntityManager()
                .createNativeQuery("lock table account in share row exclusive mode")
                .executeUpdate();
        if (accounts.hasOwner()) {
            return;
        }
        NewPerson owner = new NewPerson(freeName(), "", Role.OWNER, Optional.empty());
        String password = accounts.add(owner);
        LOG.infof(
                "First start: sign in as \"%s\" with the password %s (to be changed then; it is not shown again)",
                owner.name(), password);
    }

    private String freeName() {
        String name = settings.firstOwner();
        return Account.named(name).isEmpty()
                ? name
                : name + "-" + Tokens.fresh().substring(0, 6);
    }
}
