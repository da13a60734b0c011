package org.roundsman.web.fleet;

import java.util.List;
import org.roundsman.measure.Condition;
import org.roundsman.readings.FleetTotals;
import org.roundsman.web.page.Words;

/** The fleet in one line, as it is shown. */
record Totals(String clients, String sites, List<Part> parts, String others, boolean nothing) {

    /** Access points in one condition. */
    record Part(String word, String count) {}

    static Totals of(FleetTotals totals) {
        return new Totals(
                Words.count(totals.clients()),
                Words.many(totals.sites(), "site", "sites") + " of "
                        + Words.many(totals.customers(), "customer", "customers"),
                List.of(
                        part(Condition.ANSWERING, totals.answering()),
                        part(Condition.SILENT, totals.silent()),
                        part(Condition.REFUSING, totals.refusing()),
                        part(Condition.UNWATCHED, totals.unwatched())),
                others(totals),
                totals.sites() == 0);
    }

    private static Part part(Condition condition, int count) {
        return new Part(condition.word(), Words.count(count));
    }

    private static String others(FleetTotals totals) {
        String all = Words.many(totals.otherDevices(), "switch or gateway", "switches and gateways");
        return totals.otherTrouble() == 0
                ? all + ", none in trouble"
                : all + ", " + totals.otherTrouble() + " in trouble";
    }
}
