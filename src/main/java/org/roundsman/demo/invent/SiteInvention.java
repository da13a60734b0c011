package org.roundsman.demo.invent;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.roundsman.demo.DemoContact;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoNetwork;
import org.roundsman.demo.DemoSite;
import org.roundsman.demo.invent.Scenario.CustomerPlan;
import org.roundsman.demo.invent.Scenario.SitePlan;
import org.roundsman.demo.model.Lot;

/** Address, line, people and networks of a site. */
final class SiteInvention {

    private static final int[] DOWN_KBIT = {50_000, 100_000, 250_000, 500_000, 1_000_000};

    private SiteInvention() {}

    static DemoSite invent(long seed, int customer, int number, SitePlan plan, CustomerPlan owner) {
        long key = Lot.key(seed, 200, number);
        int down = DOWN_KBIT[Lot.below(Lot.key(key, 1), DOWN_KBIT.length)];
        String street = street(key, plan);
        String town = pick(Words.FIRST, Lot.key(key, 3)) + pick(Words.SECOND, Lot.key(key, 4));
        return new DemoSite(
                number,
                customer,
                plan.name(),
                plan.trade().kind,
                plan.region().zone,
                (1 + Lot.below(Lot.key(key, 5), 98)) + " " + street,
                plan.region().postcode(Lot.below(Lot.key(key, 6), 10)),
                town,
                plan.region().country,
                accessNote(plan.trade()),
                down,
                down / 5,
                plan.trade().hours(),
                contacts(key, plan, owner),
                networks(owner, plan.trade()),
                List.of());
    }

    /** The same site with its devices. */
    static DemoSite with(DemoSite site, List<DemoDevice> devices) {
        return new DemoSite(
                site.number(),
                site.customer(),
                site.name(),
                site.kind(),
                site.zone(),
                site.street(),
                site.postcode(),
                site.town(),
                site.country(),
                site.accessNote(),
                site.uplinkDownKbit(),
                site.uplinkUpKbit(),
                site.hours(),
                site.contacts(),
                site.networks(),
                devices);
    }

    /** The street that the site is named after, if it is, else one by lot. */
    private static String street(long key, SitePlan plan) {
        return Words.STREETS.stream()
                .filter(plan.name()::startsWith)
                .findFirst()
                .orElseGet(() -> pick(Words.STREETS, Lot.key(key, 2)));
    }

    private static String accessNote(Trade trade) {
        return switch (trade) {
            case PIER, TIMBER_YARD ->
                "Mast work: working at height, two people, follow the local rules. Key at the office.";
            case SCHOOL ->
                "Sign in at the porter's lodge. Ceiling work outside lessons only. Ladder in the boiler room.";
            case HOTEL -> "Ask at the desk for the floor key. No ceiling work before 10:00.";
            case CLINIC -> "Surgeries only between patients. Ladder in the store.";
            default -> "Ring at the front door. Ladder on site.";
        };
    }

    private static List<DemoContact> contacts(long key, SitePlan plan, CustomerPlan owner) {
        List<DemoContact> contacts = new ArrayList<>();
        contacts.add(contact(Lot.key(key, 40), plan.trade().duty, owner));
        if (Lot.unit(Lot.key(key, 41)) < 0.5) {
            contacts.add(contact(Lot.key(key, 42), "Caretaker", owner));
        }
        return contacts;
    }

    /** Numbers 555-0100 to 555-0199 are kept for fiction in North America (from memory). */
    private static DemoContact contact(long key, String duty, CustomerPlan owner) {
        String given = pick(Words.GIVEN, Lot.key(key, 1));
        String family = pick(Words.FAMILY, Lot.key(key, 2));
        String mail = (given + "." + family).toLowerCase(Locale.ROOT) + "@" + owner.slug() + ".example";
        String phone = String.format("+1-555-01%02d", Lot.below(Lot.key(key, 3), 100));
        return new DemoContact(given + " " + family, duty, phone, mail);
    }

    private static List<DemoNetwork> networks(CustomerPlan owner, Trade trade) {
        String word = owner.name().split(" ")[owner.name().startsWith("Hotel ") ? 1 : 0];
        String staff = trade == Trade.SCHOOL ? " Teachers" : " House";
        String guest = trade == Trade.SCHOOL ? " Pupils" : " Guests";
        return List.of(new DemoNetwork(word + staff, "staff"), new DemoNetwork(word + guest, "guest"));
    }

    private static String pick(List<String> words, long key) {
        return words.get(Lot.below(key, words.size()));
    }
}
