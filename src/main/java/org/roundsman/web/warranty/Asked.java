package org.roundsman.web.warranty;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;

/** Reads what an address or a form says as text; what makes no sense counts as not said. */
final class Asked {

    private Asked() {}

    static String text(String value) {
        return value == null ? "" : value.replace("\0", "").strip();
    }

    static OptionalLong number(String value) {
        String text = text(value);
        return text.matches("[0-9]{1,17}") ? OptionalLong.of(Long.parseLong(text)) : OptionalLong.empty();
    }

    /** A page number from 1. */
    static int page(String value) {
        return text(value).matches("[1-9][0-9]{0,5}") ? Integer.parseInt(text(value)) : 1;
    }

    static Optional<LocalDate> day(String value) {
        try {
            LocalDate day = text(value).isEmpty() ? null : LocalDate.parse(text(value));
            return Optional.ofNullable(day).filter(one -> one.getYear() >= 1900 && one.getYear() <= 2200);
        } catch (DateTimeException e) {
            return Optional.empty(); // as if nothing was said
        }
    }

    static Optional<YearMonth> month(String value) {
        try {
            return text(value).isEmpty() ? Optional.empty() : Optional.of(YearMonth.parse(text(value)));
        } catch (DateTimeException e) {
            return Optional.empty(); // as if nothing was said
        }
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
