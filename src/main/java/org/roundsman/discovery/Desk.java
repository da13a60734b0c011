package org.roundsman.discovery;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.util.Map;
import org.roundsman.audit.AuditTrail;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.Sites;

/** What every use of sweeps needs: the site within the scope of who asks, the audit, the time. */
@ApplicationScoped
class Desk {

    private final Sites sites;
    private final AuditTrail audit;
    private final Clock clock;

    @Inject
    Desk(Sites sites, AuditTrail audit, Clock clock) {
        this.sites = sites;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * The site.
     *
     * @throws InputRejected with a fault of {@code id} when it is not there or lies outside the scope
     */
    Site site(CustomerScope scope, long id) {
        return sites.find(scope, id)
                .orElseThrow(() -> new InputRejected(Map.of("id", "this site is not there any more")));
    }

    AuditTrail audit() {
        return audit;
    }

    Instant now() {
        return clock.instant();
    }
}
