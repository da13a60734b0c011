package org.roundsman.demo.invent;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.roundsman.demo.DemoCredential;
import org.roundsman.demo.DemoCustomer;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.DemoModel;
import org.roundsman.demo.DemoSite;
import org.roundsman.demo.invent.Scenario.CustomerPlan;
import org.roundsman.demo.invent.Scenario.SitePlan;

/** Makes the customer on whom onboarding is tried: two sites, each in one small range of addresses. */
public final class ProspectInvention {

    private static final long SEED = 8_800;
    private static final String NAME = "Lanternfield Bakery";
    private static final String SLUG = "lanternfield";
    /** Locally administered, and apart from those of the other fleet. */
    private static final long MACS = 0x025B00000000L;

    private static final int MACS_PER_DEVICE = 8;
    private static final int USUAL_PEAK = 6;

    private static final DemoCredential READ = new DemoCredential.Community("Community", 2, "lanternfield-read");
    /** Nobody changed what the maker had set. */
    private static final DemoCredential UNCHANGED = new DemoCredential.Community("As delivered", 2, "public");

    private static final DemoCredential SECURE = new DemoCredential.User(
            "SNMPv3", "rounds-lanternfield", "demo-auth-lanternfield", "demo-priv-lanternfield");

    /** A device to be: its model, the last label of its name, its place, and what its agent lets in. */
    private record Unit(DemoModel model, String word, String place, DemoCredential credential) {}

    private final int port;
    private final List<DemoSite> sites = new ArrayList<>();
    private final List<DemoDevice> devices = new ArrayList<>();

    private ProspectInvention(int port) {
        this.port = port;
    }

    /** The fleet of that one customer, with its agents on that port. */
    public static DemoFleet invent(int port) {
        ProspectInvention invention = new ProspectInvention(port);
        SitePlan ovens = new SitePlan("Oven Court", "oven-court", Trade.SHOP, Region.BRITAIN, 6);
        SitePlan crumb = new SitePlan("Crumb Street", "crumb-street", Trade.SHOP, Region.BRITAIN, 4);
        CustomerPlan plan = new CustomerPlan(NAME, SLUG, false, List.of(ovens, crumb));
        invention.add(plan, ovens, bakehouse());
        invention.add(plan, crumb, shop());
        DemoCustomer customer =
                new DemoCustomer(0, NAME, DemoFleet.NOTE, List.of(READ, UNCHANGED, SECURE), invention.sites);
        int accessPoints = ovens.accessPoints() + crumb.accessPoints();
        return new DemoFleet(accessPoints, SEED, List.of(customer), invention.sites, invention.devices);
    }

    private static List<Unit> bakehouse() {
        return List.of(
                new Unit(DemoModel.TG_4, "gateway", "Flour store", READ),
                new Unit(DemoModel.TS_24, "switch-1", "Flour store", READ),
                new Unit(DemoModel.TR_22, "ap-01", "Bakehouse, north", READ),
                new Unit(DemoModel.TR_22, "ap-02", "Bakehouse, south", READ),
                new Unit(DemoModel.TR_10, "ap-03", "Cold store", READ),
                new Unit(DemoModel.TR_33, "ap-04", "Office", READ),
                new Unit(DemoModel.TR_50X, "ap-05", "Yard mast", READ),
                new Unit(DemoModel.GI_7, "ap-06", "Loading ramp", UNCHANGED));
    }

    private static List<Unit> shop() {
        return List.of(
                new Unit(DemoModel.TG_4, "gateway", "Under the stairs", SECURE),
                new Unit(DemoModel.TS_24, "switch-1", "Under the stairs", SECURE),
                new Unit(DemoModel.TR_22, "ap-01", "Counter", SECURE),
                new Unit(DemoModel.TR_22, "ap-02", "Tea room", SECURE),
                new Unit(DemoModel.TR_22, "ap-03", "Upper floor", SECURE),
                new Unit(DemoModel.TR_10, "ap-04", "Kitchen", SECURE));
    }

    private void add(CustomerPlan owner, SitePlan plan, List<Unit> units) {
        DemoSite site = SiteInvention.invent(SEED, 0, sites.size(), plan, owner);
        List<DemoDevice> own = new ArrayList<>();
        for (Unit unit : units) {
            DemoDevice device = device(site.number(), own.size() + 1, plan.slug(), unit);
            own.add(device);
            devices.add(device);
        }
        sites.add(SiteInvention.with(site, own));
    }

    private DemoDevice device(int site, int place, String slug, Unit unit) {
        int number = devices.size();
        long mac = MACS + (long) number * MACS_PER_DEVICE;
        String name = slug + "-" + unit.word();
        DemoModel model = unit.model();
        return new DemoDevice(
                number,
                site,
                model,
                name,
                name + "." + SLUG + ".example",
                unit.place(),
                "127.19." + (site + 1) + "." + place,
                port,
                unit.credential(),
                unit.credential(),
                "INV-" + model.label().replace("-", "") + String.format("-L%05d", number + 1),
                mac,
                model.bands().isEmpty() ? 0 : USUAL_PEAK,
                RadioPlacing.radios(SEED, model, mac, number),
                Set.of());
    }
}
