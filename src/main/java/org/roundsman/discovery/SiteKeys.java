package org.roundsman.discovery;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.roundsman.discovery.run.Key;
import org.roundsman.discovery.run.KeyRing;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.Credentials;
import org.roundsman.fleet.Site;
import org.roundsman.polling.FleetPollTargets;
import org.roundsman.system.SealException;

/** The credentials that sweeps may try. */
@ApplicationScoped
@ActivateRequestContext
class SiteKeys implements KeyRing {

    private final Credentials credentials;

    SiteKeys(Credentials credentials) {
        this.credentials = credentials;
    }

    /** Those usable at the site, in the order in which they are tried. */
    List<Credential> usableAt(Site site) {
        return credentials.usableAt(site.id);
    }

    /** Those of the plan, in that order. */
    List<Credential> chosen(Site site, SweepPlan plan) {
        return usableAt(site).stream().filter(c -> plan.tries(c.id)).toList();
    }

    @Override
    public Opened open(List<Long> credentialIds) {
        List<Key> keys = new ArrayList<>();
        List<String> closed = new ArrayList<>();
        for (long id : credentialIds) {
            Optional<Credential> credential = credentials.find(id);
            try {
                credential.ifPresent(c -> keys.add(new Key(id, FleetPollTargets.access(credentials.secrets(c)))));
            } catch (SealException e) {
                closed.add(credential.map(c -> c.name).orElse(""));
            }
        }
        String remark = closed.isEmpty()
                ? ""
                : "Not tried, because they have to be entered again (their key file is not the one in use): "
                        + String.join(", ", closed) + ".";
        return new Opened(keys, remark);
    }
}
