package org.roundsman.web.fleet;

import jakarta.ws.rs.core.MultivaluedMap;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.roundsman.measure.Condition;
import org.roundsman.readings.BoardQuery;

/**
 * What the fleet view shows, as it stands in the address: a link to it can be sent to somebody else. What cannot be read
 * in an address falls back to its default.
 */
record BoardAddress(Tab tab, BoardQuery query, FlagChoice flags) {

    private static final int SIZE = 25;
    private static final int LONGEST_SEARCH = 200;
    /** So that an offset never overflows; no fleet is that long. */
    private static final int LAST_PAGE = 1_000_000;

    static BoardAddress of(MultivaluedMap<String, String> parameters) {
        Tab tab = choice(Tab.values(), Tab::key, parameters.getFirst("list")).orElse(Tab.SITES);
        BoardQuery.Sort sort = choice(BoardQuery.Sort.values(), BoardAddress::word, parameters.getFirst("sort"))
                .orElse(BoardQuery.Sort.TROUBLE);
        String search = Optional.ofNullable(parameters.getFirst("search")).orElse("");
        return new BoardAddress(
                tab,
                new BoardQuery(
                        search.strip().substring(0, Math.min(search.strip().length(), LONGEST_SEARCH)),
                        number(parameters.getFirst("customer")),
                        number(parameters.getFirst("site")),
                        tab.kind(),
                        conditions(parameters.get("condition")),
                        sort,
                        "down".equals(parameters.getFirst("order")),
                        (int) page(parameters.getFirst("page")),
                        SIZE),
                FlagChoice.of(parameters));
    }

    private static long page(String text) {
        return number(text).filter(n -> n >= 1).map(n -> Math.min(n, LAST_PAGE)).orElse(1L);
    }

    private static Set<Condition> conditions(List<String> words) {
        Set<Condition> conditions = EnumSet.noneOf(Condition.class);
        for (String word : words == null ? List.<String>of() : words) {
            choice(Condition.values(), Condition::word, word).ifPresent(conditions::add);
        }
        return conditions;
    }

    private static <T> Optional<T> choice(T[] all, java.util.function.Function<T, String> key, String word) {
        return Arrays.stream(all).filter(one -> key.apply(one).equals(word)).findFirst();
    }

    private static Optional<Long> number(String text) {
        try {
            return text == null || text.isBlank() ? Optional.empty() : Optional.of(Long.parseLong(text.strip()));
        } catch (NumberFormatException e) {
            return Optional.empty(); // an address that was typed by hand: the whole list is the better answer
        }
    }

    static String word(BoardQuery.Sort sort) {
        return sort.name().toLowerCase(Locale.ROOT);
    }

    BoardAddress onPage(int page) {
        return new BoardAddress(tab, with(query, page), flags);
    }

    /** The same filter in another list, from its first page. */
    BoardAddress in(Tab other) {
        BoardQuery first = with(query, 1);
        return new BoardAddress(other, first, flags);
    }

    private static BoardQuery with(BoardQuery q, int page) {
        return new BoardQuery(
                q.search(),
                q.customerId(),
                q.siteId(),
                q.kind(),
                q.conditions(),
                q.sort(),
                q.descending(),
                page,
                q.size());
    }

    /** Whether anything but the order is chosen. */
    boolean filtered() {
        return !query.search().isEmpty()
                || query.customerId().isPresent()
                || query.siteId().isPresent()
                || !query.conditions().isEmpty()
                || !flags.none();
    }

    /** The address after the question mark; what is at its default is left out. */
    String text() {
        List<String> parts = new ArrayList<>();
        if (tab != Tab.SITES) {
            parts.add("list=" + tab.key());
        }
        if (!query.search().isEmpty()) {
            parts.add("search=" + URLEncoder.encode(query.search(), StandardCharsets.UTF_8));
        }
        query.customerId().ifPresent(id -> parts.add("customer=" + id));
        query.siteId().ifPresent(id -> parts.add("site=" + id));
        query.conditions().stream().sorted().forEach(c -> parts.add("condition=" + c.word()));
        parts.addAll(flags.parts());
        if (query.sort() != BoardQuery.Sort.TROUBLE) {
            parts.add("sort=" + word(query.sort()));
        }
        if (query.descending()) {
            parts.add("order=down");
        }
        if (query.page() > 1) {
            parts.add("page=" + query.page());
        }
        return String.join("&", parts);
    }

    String link() {
        return text().isEmpty() ? "/" : "/?" + text();
    }

    String liveLink() {
        return text().isEmpty() ? "/board" : "/board?" + text();
    }
}
