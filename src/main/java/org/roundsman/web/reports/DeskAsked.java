package org.roundsman.web.reports;

import java.time.YearMonth;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jboss.resteasy.reactive.RestQuery;

/**
 * What the address of the month's desk asks for, as text.
 *
 * @param state key of a {@link StateWord}, or one of {@link DeskRow}'s further filters
 */
record DeskAsked(@RestQuery String month, @RestQuery String state) {

    DeskAsked {
        month = Asked.text(month);
        state = Asked.text(state);
    }

    static DeskAsked of(YearMonth month) {
        return new DeskAsked(month.toString(), "");
    }

    /** The month that is asked for; the last full one where none is, or one that has not begun. */
    YearMonth wanted(YearMonth now) {
        return Asked.month(month).filter(one -> !one.isAfter(now)).orElse(now.minusMonths(1));
    }

    static String address(String path, YearMonth month, String state) {
        Map<String, String> parts = new LinkedHashMap<>();
        parts.put("month", month.toString());
        parts.put("state", state);
        return path + Asked.address(parts);
    }
}
