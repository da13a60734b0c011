package org.roundsman.web.warranty;

import jakarta.enterprise.context.RequestScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.shared.Page;
import org.roundsman.warranty.Contract;
import org.roundsman.warranty.Contracts;
import org.roundsman.warranty.UnitCover;
import org.roundsman.warranty.Warranties;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** Makes the page of a contract. */
@RequestScoped
class ContractViews {

    private static final int A_PAGE = 50;
    private static final int MOST_NAMED = 30;

    private final Contracts contracts;
    private final Warranties warranties;
    private final Choices choices;
    private final Visitor visitor;
    private final Clock clock;

    ContractViews(Contracts contracts, Warranties warranties, Choices choices, Visitor visitor, Clock clock) {
        this.contracts = contracts;
        this.warranties = warranties;
        this.choices = choices;
        this.visitor = visitor;
        this.clock = clock;
    }

    /**
     * What became of units that were to be covered.
     *
     * @param done in words, or empty
     * @param left serial numbers that were not taken since their units left for good, with what became of them
     * @param unknown serial numbers that were not taken since no unit has them
     */
    record Told(String done, List<String> left, List<String> unknown) {

        static final Told NOTHING = new Told("", List.of(), List.of());

        static Told of(Contracts.Covered covered) {
            String done = Words.many(covered.added(), "unit", "units") + " added"
                    + (covered.already() > 0 ? ", " + Words.count(covered.already()) + " covered already" : "") + ".";
            List<String> left = covered.left().entrySet().stream()
                    .map(one -> one.getKey() + ": " + one.getValue())
                    .toList();
            return new Told(done, named(left), named(covered.unknown()));
        }

        private static List<String> named(List<String> all) {
            List<String> named = new ArrayList<>(all.subList(0, Math.min(MOST_NAMED, all.size())));
            int more = all.size() - named.size();
            if (more > 0) {
                named.add("and " + Words.count(more) + " more");
            }
            return named;
        }
    }

    /** A unit of the contract. */
    record Covered(String serial, String address, String title, String model, String site, String lastDay) {}

    /** What the page shows. */
    record View(
            ContractLine contract,
            Page<Covered> units,
            List<Choices.Choice> sites,
            List<Choices.Choice> models,
            Told told) {}

    View of(Contract one, int page, Told told) {
        Set<String> serials = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
        serials.addAll(contracts.serials(visitor.scope(), one.id()));
        int number = Math.min(page, new Page<>(List.of(), 1, A_PAGE, serials.size()).last());
        List<String> shown = serials.stream()
                .skip((long) (number - 1) * A_PAGE)
                .limit(A_PAGE)
                .toList();
        TreeMap<String, UnitCover> known = warranties.all(CustomerScope.of(one.customerId())).stream()
                .filter(cover -> !cover.serial().isEmpty())
                .collect(Collectors.toMap(
                        cover -> cover.serial().toLowerCase(Locale.ROOT), cover -> cover, (a, b) -> a, TreeMap::new));
        Map<String, String> left = contracts.left(visitor.scope(), one.id());
        List<Covered> units = shown.stream()
                .map(serial -> {
                    String key = serial.toLowerCase(Locale.ROOT);
                    return known.containsKey(key)
                            ? covered(serial, known.get(key))
                            : missing(one.customerId(), serial, left.getOrDefault(key, ""));
                })
                .toList();
        return new View(
                ContractLine.of(one, LocalDate.now(clock)),
                new Page<>(units, number, A_PAGE, serials.size()),
                choices.sites(one.customerId(), ""),
                choices.models(""),
                told);
    }

    private static Covered covered(String serial, UnitCover cover) {
        UnitLine line = UnitLine.of(cover);
        return new Covered(serial, line.address(), line.title(), line.model(), line.site(), line.lastDay());
    }

    /** What left for good has a page still, with all that it went through. */
    private static Covered missing(long customerId, String serial, String fate) {
        if (fate.isEmpty()) {
            return new Covered(serial, "", "no unit tells this serial number now", "", "", "");
        }
        String page = "/units" + Asked.address(Map.of("customer", String.valueOf(customerId), "serial", serial));
        return new Covered(serial, page, "this unit was " + fate, "", "", "");
    }
}
