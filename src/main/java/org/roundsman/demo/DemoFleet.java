package org.roundsman.demo;

import java.util.List;
import org.roundsman.demo.invent.FleetInvention;
import org.roundsman.demo.invent.ProspectInvention;

/**
 * A whole invented fleet. The same size, seed and port always give the same fleet. Immutable.
 *
 * @param accessPoints how many access points it has
 * @param seed what everything that is drawn by lot is drawn from
 * @param sites by number
 * @param devices by number
 */
public record DemoFleet(
        int accessPoints, long seed, List<DemoCustomer> customers, List<DemoSite> sites, List<DemoDevice> devices) {

    public static final int SMALLEST = 250;
    public static final int LARGEST = 20_000;
    public static final int USUAL_SIZE = 260;
    public static final long USUAL_SEED = 20_261;
    /** UDP port of the agents; each has its own address. */
    public static final int USUAL_PORT = 16_161;

    /** The note that every customer of the fleet carries. */
    public static final String NOTE = "Invented for demonstration";

    public DemoFleet {
        customers = List.copyOf(customers);
        sites = List.copyOf(sites);
        devices = List.copyOf(devices);
    }

    /** A fleet on the usual port. */
    public static DemoFleet of(int accessPoints, long seed) {
        return of(accessPoints, seed, USUAL_PORT);
    }

    /**
     * A fleet of that size.
     *
     * @throws IllegalArgumentException for a size outside {@link #SMALLEST} to {@link #LARGEST}, or a port outside 1 to
     *     65535
     */
    public static DemoFleet of(int accessPoints, long seed, int port) {
        if (accessPoints < SMALLEST || accessPoints > LARGEST) {
            throw new IllegalArgumentException("the invented fleet has between " + SMALLEST + " and " + LARGEST
                    + " access points, not " + accessPoints);
        }
        if (port < 1 || port > 65_535) {
            throw new IllegalArgumentException("a UDP port lies between 1 and 65535, not " + port);
        }
        return FleetInvention.invent(accessPoints, seed, port);
    }

    /**
     * A second, small fleet: one customer whose agents answer too, but whom nobody has entered in the service, so that
     * onboarding can be tried on it. Always the same.
     */
    public static DemoFleet prospect(int port) {
        return ProspectInvention.invent(port);
    }

    public DemoSite siteOf(DemoDevice device) {
        return sites.get(device.site());
    }

    public DemoCustomer customerOf(DemoSite site) {
        return customers.get(site.customer());
    }
}
