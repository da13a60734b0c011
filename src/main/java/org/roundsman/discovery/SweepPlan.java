package org.roundsman.discovery;

import java.util.List;

/**
 * What is entered for the sweeps of a site.
 *
 * @param ranges one a line
 * @param ports UDP ports
 * @param all whether all credentials are tried that are usable at the site
 * @param credentials ids of those to try, where not all are
 */
public record SweepPlan(String ranges, List<Integer> ports, boolean all, List<Long> credentials) {

    /** The standard port of SNMP agents (RFC 3417). */
    public static final int PORT = 161;

    public SweepPlan {
        ports = List.copyOf(ports);
        credentials = List.copyOf(credentials);
    }

    /** Where nothing is entered yet. */
    public static SweepPlan blank() {
        return new SweepPlan("", List.of(PORT), true, List.of());
    }

    boolean tries(long credentialId) {
        return all || credentials.contains(credentialId);
    }
}
