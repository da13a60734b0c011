package org.roundsman.demo;

import java.util.List;

/**
 * One invented customer.
 *
 * @param number its place in the fleet, from 0 without gaps
 * @param note says that it is invented
 * @param credentials every credential that its devices name, without repeats
 */
public record DemoCustomer(
        int number, String name, String note, List<DemoCredential> credentials, List<DemoSite> sites) {

    public DemoCustomer {
        credentials = List.copyOf(credentials);
        sites = List.copyOf(sites);
    }
}
