package org.roundsman.reports;

import java.time.LocalDate;
import java.util.List;

/**
 * An invented clinic of {@link ReportExample}, open on weekdays from 8:00 to 18:00 and on Saturdays from 9:00 to 13:00.
 *
 * @param places of its access points
 * @param since first day in the fleet
 * @param people on its Wi-Fi in the middle of a weekday
 */
record ExampleClinic(long id, String name, String town, List<String> places, LocalDate since, double people) {

    static final double TARGET = 99.5;

    long deviceId(int at) {
        return id * 100 + at + 1;
    }

    /** Such as {@code canal-ap-1}. */
    String device(int at) {
        return name.toLowerCase(java.util.Locale.ROOT).split(" ")[0] + "-ap-" + (at + 1);
    }
}
