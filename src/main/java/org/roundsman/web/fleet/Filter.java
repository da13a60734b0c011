package org.roundsman.web.fleet;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.roundsman.fleet.Customer;
import org.roundsman.measure.Condition;
import org.roundsman.readings.BoardQuery;

/** The form above the fleet view. */
record Filter(
        String list,
        String site,
        String search,
        List<Choice> customers,
        List<Choice> conditions,
        FlagChoice flags,
        List<Choice> sorts,
        boolean descending) {

    private static final Map<BoardQuery.Sort, String> SORTS = Map.of(
            BoardQuery.Sort.TROUBLE, "trouble first",
            BoardQuery.Sort.NAME, "name",
            BoardQuery.Sort.CUSTOMER, "customer",
            BoardQuery.Sort.CLIENTS, "clients now",
            BoardQuery.Sort.UTILISATION, "channel utilisation",
            BoardQuery.Sort.SINCE, "how long");

    /** Something to choose. */
    record Choice(String value, String text, boolean chosen) {}

    static Filter of(BoardAddress address, List<Customer> customers) {
        BoardQuery query = address.query();
        return new Filter(
                address.tab().key(),
                query.siteId().map(String::valueOf).orElse(""),
                query.search(),
                customers.stream()
                        .map(c -> new Choice(
                                c.id.toString(), c.name, query.customerId().equals(java.util.Optional.of(c.id))))
                        .toList(),
                Arrays.stream(Condition.values())
                        .map(c -> new Choice(
                                c.word(), c.word(), query.conditions().contains(c)))
                        .toList(),
                address.flags(),
                Arrays.stream(BoardQuery.Sort.values())
                        .map(s -> new Choice(BoardAddress.word(s), SORTS.get(s), s == query.sort()))
                        .toList(),
                query.descending());
    }

    public List<Choice> firmware() {
        return flags.firmwareChoices();
    }

    public List<Choice> covers() {
        return flags.coverChoices();
    }

    /** Whether there is a choice of customers at all. */
    public boolean manyCustomers() {
        return customers.size() > 1;
    }
}
