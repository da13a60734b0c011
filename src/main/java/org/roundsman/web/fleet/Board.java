package org.roundsman.web.fleet;

import java.util.Arrays;
import java.util.List;
import org.roundsman.shared.Page;
import org.roundsman.web.page.Words;

/** The part of the fleet view that refreshes itself. */
record Board(
        BoardAddress address,
        Totals totals,
        String behind,
        List<SiteLine> sites,
        List<DeviceLine> devices,
        String range,
        Pager pager,
        String asOf) {

    /** A list in the row of tabs. */
    record TabLink(String title, String link, boolean here) {}

    /** Links to the neighbours; empty where there is none. */
    record Pager(String previous, String next, String text) {

        static Pager of(Page<?> page, BoardAddress address) {
            return new Pager(
                    page.hasPrevious()
                            ? address.onPage(Math.min(page.number(), page.last() + 1) - 1)
                                    .link()
                            : "",
                    page.hasNext() ? address.onPage(page.number() + 1).link() : "",
                    "Page " + page.number() + " of " + page.last());
        }
    }

    static String range(Page<?> page, Tab tab) {
        if (page.items().isEmpty()) {
            return "";
        }
        long from = (long) (page.number() - 1) * page.size() + 1;
        return Words.count(from) + " to " + Words.count(from + page.items().size() - 1) + " of "
                + Words.many(page.total(), tab.one(), tab.more());
    }

    public List<TabLink> tabs() {
        return Arrays.stream(Tab.values())
                .map(tab -> new TabLink(tab.title(), address.in(tab).link(), tab == address.tab()))
                .toList();
    }

    public boolean ofSites() {
        return address.tab() == Tab.SITES;
    }

    public boolean ofAccessPoints() {
        return address.tab() == Tab.ACCESS_POINTS;
    }

    public boolean empty() {
        return sites.isEmpty() && devices.isEmpty();
    }

    public boolean filtered() {
        return address.filtered();
    }

    public String unfiltered() {
        return "/?list=" + address.tab().key();
    }

    public String liveLink() {
        return address.liveLink();
    }
}
