package org.roundsman.web.planned;

import java.time.DayOfWeek;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.IntPredicate;
import org.roundsman.planned.Repetition;

/** Something to choose in the form of planned work. */
record Pick(int value, String text, boolean chosen) {

    private static final List<String> PLACES = List.of("first", "second", "third", "fourth");

    static List<Pick> weekdays(IntPredicate chosen) {
        return Arrays.stream(DayOfWeek.values())
                .map(day -> new Pick(
                        day.getValue(),
                        day.getDisplayName(TextStyle.FULL, Locale.ENGLISH),
                        chosen.test(day.getValue())))
                .toList();
    }

    static List<Pick> days(String chosen) {
        List<Pick> days = new ArrayList<>();
        for (int day = 1; day <= 31; day++) {
            days.add(of(day, String.valueOf(day), chosen));
        }
        days.add(of(Repetition.LAST, "the last", chosen));
        return days;
    }

    static List<Pick> places(String chosen) {
        List<Pick> places = new ArrayList<>();
        for (int place = 1; place <= PLACES.size(); place++) {
            places.add(of(place, PLACES.get(place - 1), chosen));
        }
        places.add(of(Repetition.LAST, "last", chosen));
        return places;
    }

    private static Pick of(int value, String text, String chosen) {
        return new Pick(value, text, String.valueOf(value).equals(chosen));
    }
}
