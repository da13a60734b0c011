package org.roundsman.demo.invent;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.roundsman.demo.DemoCredential;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoModel;
import org.roundsman.demo.Fault;
import org.roundsman.demo.invent.Scenario.CustomerPlan;
import org.roundsman.demo.invent.Scenario.SitePlan;
import org.roundsman.demo.model.Lot;

/** Puts a gateway, switches and access points into one site. */
final class DevicePlacing {

    static final int ACCESS_POINTS_PER_SWITCH = 14;
    /** 00-00-5E-00-53-00 to -FF: kept for documentation by RFC 7042. */
    private static final long DOCUMENTATION_MACS = 0x00005E005300L;
    /** Second bit of the first octet: locally administered. */
    private static final long LOCAL_MACS = 0x025A00000000L;

    private static final int MACS_PER_DEVICE = 8;

    private final long seed;
    private final int port;
    private final CustomerPlan owner;
    private final SitePlan plan;
    private final DemoCredential credential;
    private final List<DemoDevice> placed = new ArrayList<>();

    DevicePlacing(long seed, int port, CustomerPlan owner, SitePlan plan, DemoCredential credential) {
        this.seed = seed;
        this.port = port;
        this.owner = owner;
        this.plan = plan;
        this.credential = credential;
    }

    /**
     * The devices of the site.
     *
     * @param first number of the first device
     * @param accessPointsBefore access points that the fleet has already
     */
    List<DemoDevice> place(int site, int first, int accessPointsBefore) {
        add(site, first, DemoModel.TG_4, "gateway", "Comms cabinet", Set.of());
        int switches = (plan.accessPoints() + ACCESS_POINTS_PER_SWITCH - 1) / ACCESS_POINTS_PER_SWITCH;
        for (int i = 1; i <= switches; i++) {
            add(site, first, DemoModel.TS_24, "switch-" + i, "Comms cabinet", Set.of());
        }
        for (int i = 1; i <= plan.accessPoints(); i++) {
            addAccessPoint(site, first, i, accessPointsBefore + i);
        }
        return placed;
    }

    private void addAccessPoint(int site, int first, int index, int ordinal) {
        long key = Lot.key(seed, 300, ordinal);
        List<String> places = plan.trade().places();
        String place = places.get((index - 1) % places.size());
        int floor = (index - 1) / places.size();
        boolean crowded = crowded(index);
        String where = crowded ? crowdedPlace() : floor == 0 ? place : place + ", part " + (floor + 1);
        DemoModel model = crowded ? DemoModel.TR_33 : model(place, key);
        add(site, first, model, String.format("ap-%02d", index), where, StandingFaults.of(owner, plan, index, ordinal));
    }

    /** One room of the school and one of the hotel fills with more people than its radios can serve. */
    private boolean crowded(int index) {
        return index == 4 && StandingFaults.hasCrowdedRoom(owner, plan);
    }

    private String crowdedPlace() {
        return plan.trade() == Trade.HOTEL ? "Ballroom" : "Assembly hall";
    }

    private DemoModel model(String place, long key) {
        DemoModel usual = plan.trade().model;
        if (place.equals("Stock room") || place.equals("Archive")) {
            return DemoModel.TR_10;
        }
        if (usual == DemoModel.TR_33 && Lot.unit(Lot.key(key, 1)) < 0.6) {
            return DemoModel.TR_22;
        }
        return usual;
    }

    private void add(int site, int first, DemoModel model, String word, String place, Set<Fault> standing) {
        int number = first + placed.size();
        String name = plan.slug() + "-" + word;
        DemoCredential told = standing.contains(Fault.CREDENTIAL_WRONG) ? wrong() : credential;
        long mac = mac(number);
        placed.add(new DemoDevice(
                number,
                site,
                model,
                name,
                name + "." + owner.slug() + ".example",
                place,
                host(number),
                port,
                told,
                credential,
                "INV-" + model.label().replace("-", "") + String.format("-%06d", number),
                mac,
                peak(model, standing, number),
                RadioPlacing.radios(seed, model, mac, number),
                standing));
    }

    private DemoCredential wrong() {
        if (credential instanceof DemoCredential.User user) {
            return new DemoCredential.User(
                    "SNMPv3, before the change", user.userName(), "demo-auth-long-ago", user.privPassword());
        }
        return new DemoCredential.Community("Community, before the change", 2, "demo-long-ago");
    }

    private static long mac(int number) {
        long offset = (long) number * MACS_PER_DEVICE;
        return offset + MACS_PER_DEVICE <= 256 ? DOCUMENTATION_MACS + offset : LOCAL_MACS + offset;
    }

    /** One loopback address for each device, 127.20.0.1 onward. */
    private static String host(int number) {
        return "127." + (20 + number / 62_500) + "." + number / 250 % 250 + "." + (1 + number % 250);
    }

    private int peak(DemoModel model, Set<Fault> standing, int number) {
        if (model.bands().isEmpty()) {
            return 0;
        }
        if (standing.contains(Fault.ROOM_SATURATED)) {
            return 110;
        }
        double share = 0.5 + Lot.unit(Lot.key(seed, 310, number));
        return Math.max(2, (int) Math.round(plan.trade().peak * share));
    }
}
