package org.roundsman.demo.invent;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.roundsman.demo.DemoCredential;
import org.roundsman.demo.DemoCustomer;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.DemoSite;
import org.roundsman.demo.invent.Scenario.CustomerPlan;
import org.roundsman.demo.invent.Scenario.SitePlan;
import org.roundsman.demo.model.Lot;

/** Makes a fleet: the named customers first, then customers drawn by lot until it has its size. */
public final class FleetInvention {

    private static final int MOST_SITES_OF_A_CUSTOMER = 8;

    private final long seed;
    private final int port;
    private final List<DemoCustomer> customers = new ArrayList<>();
    private final List<DemoSite> sites = new ArrayList<>();
    private final List<DemoDevice> devices = new ArrayList<>();
    private final Set<String> slugs = new HashSet<>();
    private int accessPoints;

    private FleetInvention(long seed, int port) {
        this.seed = seed;
        this.port = port;
    }

    /** The fleet of that size, seed and port. Sizes from {@link DemoFleet#SMALLEST} up hold every named customer. */
    public static DemoFleet invent(int accessPoints, long seed, int port) {
        FleetInvention invention = new FleetInvention(seed, port);
        Scenario.named().forEach(invention::add);
        while (invention.accessPoints < accessPoints) {
            invention.add(invention.drawn(accessPoints - invention.accessPoints));
        }
        return new DemoFleet(accessPoints, seed, invention.customers, invention.sites, invention.devices);
    }

    private void add(CustomerPlan plan) {
        int number = customers.size();
        slugs.add(plan.slug());
        DemoCredential credential = credential(plan);
        List<DemoSite> own = new ArrayList<>();
        for (SitePlan sitePlan : plan.sites()) {
            DevicePlacing placing = new DevicePlacing(seed, port, plan, sitePlan, credential);
            DemoSite site = SiteInvention.invent(seed, number, sites.size(), sitePlan, plan);
            List<DemoDevice> placed = placing.place(site.number(), devices.size(), accessPoints);
            site = SiteInvention.with(site, placed);
            devices.addAll(placed);
            accessPoints += sitePlan.accessPoints();
            sites.add(site);
            own.add(site);
        }
        List<DemoCredential> credentials = own.stream()
                .flatMap(s -> s.devices().stream())
                .map(DemoDevice::credential)
                .distinct()
                .toList();
        customers.add(new DemoCustomer(number, plan.name(), DemoFleet.NOTE, credentials, own));
    }

    private static DemoCredential credential(CustomerPlan plan) {
        if (plan.versionThree()) {
            return new DemoCredential.User(
                    "SNMPv3", "rounds-" + plan.slug(), "demo-auth-" + plan.slug(), "demo-priv-" + plan.slug());
        }
        return new DemoCredential.Community("Community", 2, "demo-" + plan.slug());
    }

    /** A customer by lot, with no more access points than are still wanted. */
    private CustomerPlan drawn(int wanted) {
        long key = Lot.key(seed, 100, customers.size());
        Trade trade = Trade.values()[Lot.below(Lot.key(key, 1), Trade.values().length)];
        String word = freeWord(key);
        String slug = word.toLowerCase(Locale.ROOT);
        Region home = Region.values()[Lot.below(Lot.key(key, 2), Region.values().length)];
        int siteCount = 1 + Lot.below(Lot.key(key, 3), MOST_SITES_OF_A_CUSTOMER);
        List<SitePlan> plans = new ArrayList<>();
        int left = wanted;
        for (int i = 0; i < siteCount && left > 0; i++) {
            int size = Math.min(left, 3 + Lot.below(Lot.key(key, 10, i), 18));
            plans.add(new SitePlan(siteName(key, trade, i), trade.siteWord + "-" + (i + 1), trade, home, size));
            left -= size;
        }
        boolean versionThree = customers.size() % 6 == 0;
        return new CustomerPlan(word + " " + trade.business, slug, versionThree, plans);
    }

    private String freeWord(long key) {
        for (int attempt = 0; ; attempt++) {
            String first = Words.FIRST.get(Lot.below(Lot.key(key, 20, attempt), Words.FIRST.size()));
            String second = Words.SECOND.get(Lot.below(Lot.key(key, 21, attempt), Words.SECOND.size()));
            // a second half keeps the words from running out in the largest fleets
            String third = attempt < 6 ? "" : Words.SECOND.get(attempt % Words.SECOND.size());
            String word = first + second + third;
            if (slugs.add(word.toLowerCase(Locale.ROOT))) {
                return word;
            }
        }
    }

    private static String siteName(long key, Trade trade, int number) {
        String street =
                Words.STREETS.get((Lot.below(Lot.key(key, 30), Words.STREETS.size()) + number) % Words.STREETS.size());
        return street + " " + trade.siteWord;
    }
}
