package org.roundsman.fleet;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;

/** Reads and changes the networks of sites. SSIDs that devices carry are added by {@link FactStore}. */
@ApplicationScoped
@Transactional
public class Networks {

    public static final Set<String> PURPOSES = Set.of("staff", "guest", "other");

    private final AuditTrail audit;

    @Inject
    Networks(AuditTrail audit) {
        this.audit = audit;
    }

    /** By SSID. Callers check the customer scope through {@link Sites#find} first. */
    public List<Network> ofSite(long siteId) {
        return Network.list("siteId = ?1 order by lower(ssid)", siteId);
    }

    /**
     * Sets what a network is for, and adds it where it is not known yet.
     *
     * @throws InputRejected when there is no such purpose or no such site
     */
    public void setPurpose(long siteId, String ssid, String purpose) {
        if (!PURPOSES.contains(purpose)) {
            throw new InputRejected(Map.of("purpose", "staff, guest or other"));
        }
        Site site = Site.<Site>findByIdOptional(siteId)
                .orElseThrow(() -> new InputRejected(Map.of("id", "this site is not there any more")));
        Network network = Network.<Network>find("siteId = ?1 and ssid = ?2", siteId, ssid)
                .firstResultOptional()
                .orElseGet(Network::new);
        boolean fresh = network.id == null;
        FieldSet before = fields(site, network);
        network.siteId = siteId;
        network.ssid = ssid;
        network.purpose = purpose;
        network.persist();
        Subject subject = new Subject("network", network.id.longValue(), ssid, site.customer.id);
        if (fresh) {
            audit.added(subject, fields(site, network));
        } else {
            audit.changed(subject, before, fields(site, network));
        }
    }

    private static FieldSet fields(Site site, Network network) {
        return new FieldSet().with("site", site.name).with("purpose", network.purpose);
    }
}
