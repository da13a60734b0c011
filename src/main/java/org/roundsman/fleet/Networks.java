package org.roundsman.fleet;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Reads and changes the networks of sites. SSIDs that devices carry are added by {@link FactStore}. */
@ApplicationScoped
@Transactional
public class Networks {

    public static final Set<String> PURPOSES = Set.of("staff", "guest", "other");

    /** By SSID. Callers check the customer scope through {@link Sites#find} first. */
    public List<Network> ofSite(long siteId) {
        return Network.list("siteId = ?1 order by lower(ssid)", siteId);
    }

    /**
     * Sets what a network is for, and adds it where it is not known yet.
     *
     * @throws InputRejected when there is no such purpose
     */
    public void setPurpose(long siteId, String ssid, String purpose) {
        if (!PURPOSES.contains(purpose)) {
            throw new InputRejected(Map.of("purpose", "staff, guest or other"));
        }
        Network network = Network.<Network>find("siteId = ?1 and ssid = ?2", siteId, ssid)
                .firstResultOptional()
                .orElseGet(Network::new);
        network.siteId = siteId;
        network.ssid = ssid;
        network.purpose = purpose;
        network.persist();
    }
}
