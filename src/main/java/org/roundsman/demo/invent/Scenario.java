package org.roundsman.demo.invent;

import java.util.List;

/** The six customers that every invented fleet has, with their sites. */
final class Scenario {

    /** What is settled of a customer before the rest is drawn by lot. */
    record CustomerPlan(String name, String slug, boolean versionThree, List<SitePlan> sites) {}

    /** What is settled of a site. */
    record SitePlan(String name, String slug, Trade trade, Region region, int accessPoints) {}

    private Scenario() {}

    static List<CustomerPlan> named() {
        return List.of(pebblegate(), orrin(), saltmarsh(), quillfeather(), brackwater(), thistledown());
    }

    private static CustomerPlan pebblegate() {
        return new CustomerPlan(
                "Pebblegate Dental",
                "pebblegate",
                true,
                List.of(
                        new SitePlan("Market Row", "market-row", Trade.CLINIC, Region.BRITAIN, 6),
                        new SitePlan("Canal Bridge", "canal-bridge", Trade.CLINIC, Region.BRITAIN, 5),
                        new SitePlan("Hill Top", "hill-top", Trade.CLINIC, Region.BRITAIN, 4)));
    }

    private static CustomerPlan orrin() {
        return new CustomerPlan(
                "Orrin & Vale Booksellers",
                "orrin-vale",
                false,
                List.of(
                        new SitePlan("Lantern Arcade", "lantern", Trade.SHOP, Region.BRITAIN, 5),
                        new SitePlan("Station Shop", "station", Trade.SHOP, Region.BRITAIN, 3),
                        new SitePlan("Old Exchange", "exchange", Trade.SHOP, Region.BRITAIN, 4),
                        new SitePlan("Riverside", "riverside", Trade.SHOP, Region.GERMANY, 4),
                        new SitePlan("Castle Gate", "castle-gate", Trade.SHOP, Region.GERMANY, 4)));
    }

    private static CustomerPlan saltmarsh() {
        return new CustomerPlan(
                "Saltmarsh Ferry Line",
                "saltmarsh",
                false,
                List.of(
                        new SitePlan("North Pier", "north-pier", Trade.PIER, Region.AMERICA_EAST, 7),
                        new SitePlan("South Pier", "south-pier", Trade.PIER, Region.AMERICA_EAST, 6),
                        new SitePlan("Gull Island", "gull-island", Trade.PIER, Region.AMERICA_EAST, 4),
                        new SitePlan("Harbour Head", "harbour-head", Trade.PIER, Region.AMERICA_EAST, 6)));
    }

    private static CustomerPlan quillfeather() {
        return new CustomerPlan(
                "Quillfeather School",
                "quillfeather",
                false,
                List.of(
                        new SitePlan("Main Building", "main", Trade.SCHOOL, Region.GERMANY, 26),
                        new SitePlan("Garden Building", "garden", Trade.SCHOOL, Region.GERMANY, 18)));
    }

    private static CustomerPlan brackwater() {
        return new CustomerPlan(
                "Hotel Brackwater",
                "brackwater",
                true,
                List.of(new SitePlan("The House", "house", Trade.HOTEL, Region.GERMANY, 40)));
    }

    private static CustomerPlan thistledown() {
        return new CustomerPlan(
                "Thistledown Timber",
                "thistledown",
                false,
                List.of(
                        new SitePlan("Yard", "yard", Trade.TIMBER_YARD, Region.AMERICA_MIDDLE, 9),
                        new SitePlan("Office", "office", Trade.OFFICE, Region.AMERICA_MIDDLE, 6)));
    }
}
