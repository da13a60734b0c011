package org.roundsman.web.alarms;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmSearch;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Severity;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.Sites;
import org.roundsman.shared.Page;

/** Searches the history of alarms. */
@ApplicationScoped
class AlarmHistory {

    private static final List<Choice> STATES = List.of(
            new Choice("", "any"),
            new Choice("active", "active"),
            new Choice("untouched", "active, new"),
            new Choice("acknowledged", "active, acknowledged"),
            new Choice("cleared", "cleared"),
            new Choice("shelved", "shelved"),
            new Choice("closed", "closed"));

    private final AlarmBook book;
    private final Customers customers;
    private final Sites sites;
    private final Devices devices;
    private final Clock clock;

    AlarmHistory(AlarmBook book, Customers customers, Sites sites, Devices devices, Clock clock) {
        this.book = book;
        this.customers = customers;
        this.sites = sites;
        this.devices = devices;
        this.clock = clock;
    }

    /** Something to choose. */
    record Choice(String value, String name) {}

    /**
     * What the page shows.
     *
     * @param customers to choose from; empty for somebody who sees one only
     * @param sites of the chosen customer
     * @param only the device that the search is about, or empty
     */
    record Found(HistorySearch search, List<Choice> customers, List<Choice> sites, String only, Page<AlarmLine> page) {

        public List<Choice> types() {
            return Arrays.stream(AlarmType.values())
                    .map(type -> new Choice(type.id(), type.title()))
                    .sorted(Comparator.comparing(Choice::name))
                    .toList();
        }

        public List<Choice> severities() {
            return Arrays.stream(Severity.values())
                    .sorted(Comparator.reverseOrder())
                    .map(one ->
                            new Choice(one.word(), one == Severity.CRITICAL ? one.word() : one.word() + " or worse"))
                    .toList();
        }

        public List<Choice> states() {
            return STATES;
        }

        public boolean narrowed() {
            return search.narrowed();
        }

        public String leftOut() {
            return search.leftOut();
        }

        public String newer() {
            return search.address(page.number() - 1);
        }

        public String older() {
            return search.address(page.number() + 1);
        }
    }

    Found find(CustomerScope scope, HistorySearch search) {
        Instant now = clock.instant();
        AlarmSearch wanted = search.search();
        Page<OpenAlarm> page = book.search(scope, wanted);
        List<Choice> known = customers.all(scope).stream()
                .map(one -> new Choice(String.valueOf(one.id), one.name))
                .toList();
        return new Found(
                search,
                known.size() < 2 ? List.of() : known,
                sites(scope, wanted),
                wanted.deviceId().isEmpty()
                        ? ""
                        : devices.find(scope, wanted.deviceId().getAsLong())
                                .map(device -> device.name)
                                .orElse("a device that was removed"),
                new Page<>(
                        page.items().stream()
                                .map(alarm -> AlarmLine.of(alarm, now))
                                .toList(),
                        page.number(),
                        page.size(),
                        page.total()));
    }

    /** Of the chosen customer, of the chosen site's, or of the only one in the scope. */
    private List<Choice> sites(CustomerScope scope, AlarmSearch wanted) {
        Long only = scope.onlyCustomer();
        OptionalLong customer = only != null ? OptionalLong.of(only) : wanted.customerId();
        if (customer.isEmpty() && wanted.siteId().isPresent()) {
            customer = sites.find(scope, wanted.siteId().getAsLong()).stream()
                    .mapToLong(site -> site.customer.id)
                    .findFirst();
        }
        return customer.isEmpty()
                ? List.of()
                : sites.all(scope, customer.getAsLong()).stream()
                        .map(site -> new Choice(String.valueOf(site.id), site.name))
                        .toList();
    }
}
