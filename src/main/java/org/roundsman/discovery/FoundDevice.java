package org.roundsman.discovery;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.roundsman.measure.Facts;
import org.roundsman.measure.Outcome;

/**
 * One line of the list: a device as the sweep met it, at one address or several.
 *
 * @param findingId names the line
 * @param at its addresses, the one that counts first
 * @param outcome answered, or why our credentials were refused
 * @param credential name of the credentials that let us in, or empty
 * @param credentialId the same, null when they are not there any more
 * @param model maker and name of its model in the catalogue, or empty
 * @param modelId the same, or null
 * @param entry what a person entered for it, or what is proposed
 * @param remark what was odd, or empty
 * @param adoptedAt when it was adopted
 */
public record FoundDevice(
        long findingId,
        List<Address> at,
        Outcome outcome,
        Decision decision,
        String credential,
        Long credentialId,
        Facts facts,
        List<String> profiles,
        String model,
        Long modelId,
        Review entry,
        String remark,
        Instant heardAt,
        Optional<Instant> adoptedAt) {

    public FoundDevice {
        at = List.copyOf(at);
        profiles = List.copyOf(profiles);
    }

    /** One address of it. */
    public record Address(long findingId, String host, int port) {
        /** As a person writes it; the standard port goes without saying. */
        public String text() {
            return port == SweepPlan.PORT ? host : host + " port " + port;
        }
    }

    public Address first() {
        return at.get(0);
    }

    /** Whether it can be adopted now. */
    public boolean isOpen() {
        return decision.adoptable() && adoptedAt.isEmpty();
    }
}
