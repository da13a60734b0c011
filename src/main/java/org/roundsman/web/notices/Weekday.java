package org.roundsman.web.notices;

import java.time.DayOfWeek;
import java.time.format.TextStyle;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** A day to choose. */
record Weekday(String value, String name) {

    static final List<Weekday> ALL = Arrays.stream(DayOfWeek.values())
            .map(day -> new Weekday(String.valueOf(day.getValue()), day.getDisplayName(TextStyle.FULL, Locale.ENGLISH)))
            .toList();
}
