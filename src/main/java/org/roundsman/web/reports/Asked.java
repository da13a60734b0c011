package org.roundsman.web.reports;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;

/** Reads what an address or a form says as text; what makes no sense counts as not said. */
final class Asked {

    private static final int FIRST_YEAR = 1900;
    private static final int LAST_YEAR = 2200;

    private Asked() {}

    static String text(String value) {
        return value == null ? "" : value.replace("\0", "").strip();
    }

    /** A text of several lines, with line feeds between them as forms do not send them. */
    static String lines(String value) {
        return text(value).replace("\r\n", "\n").replace('\r', '\n');
    }

    static OptionalLong number(String value) {
        String text = text(value);
        return text.matches("[0-9]{1,17}") ? OptionalLong.of(Long.parseLong(text)) : OptionalLong.empty();
    }

    /** A whole number of at most nine digits; -1, which no field takes, for anything else. */
    static int small(String value) {
        String text = text(value);
        return text.matches("[0-9]{1,9}") ? Integer.parseInt(text) : -1;
    }

    /** A page number from 1. */
    static int page(String value) {
        return text(value).matches("[1-9][0-9]{0,5}") ? Integer.parseInt(text(value)) : 1;
    }

    /** Whether a box was ticked. */
    static boolean ticked(String value) {
        return text(value).equals("yes");
    }

    static Optional<LocalDate> day(String value) {
        try {
            LocalDate day = text(value).isEmpty() ? null : LocalDate.parse(text(value));
            return Optional.ofNullable(day).filter(one -> one.getYear() >= FIRST_YEAR && one.getYear() <= LAST_YEAR);
        } catch (DateTimeException e) {
            return Optional.empty(); // as if nothing was said
        }
    }

    static Optional<YearMonth> month(String value) {
        try {
            YearMonth month = text(value).isEmpty() ? null : YearMonth.parse(text(value));
            return Optional.ofNullable(month).filter(one -> one.getYear() >= FIRST_YEAR && one.getYear() <= LAST_YEAR);
        } catch (DateTimeException e) {
            return Optional.empty(); // as if nothing was said
        }
    }

    /** Mail addresses out of a field: one a line, or between commas, semicolons and blanks. */
    static List<String> addresses(String value) {
        return Arrays.stream(text(value).split("[\\s,;]+"))
                .filter(one -> !one.isEmpty())
                .distinct()
                .toList();
    }

    /** The question mark and what follows it; empty where nothing is said. */
    static String address(Map<String, String> parts) {
        String given = parts.entrySet().stream()
                .filter(part -> !part.getValue().isEmpty())
                .map(part -> part.getKey() + "=" + URLEncoder.encode(part.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return given.isEmpty() ? "" : "?" + given;
    }
}
