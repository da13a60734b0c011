package org.roundsman.demo.model;

import org.roundsman.demo.SiteKind;

/**
 * How full a site of a kind is, by local hour of the week, from 0 to 1. The figures are made up: they only have to look
 * like such a place. Immutable.
 */
final class Rhythm {

    static final int WEEK_SECONDS = 7 * 86_400;
    private static final int HOURS = 168;

    private final double[] byHour;
    private final double guests;

    private Rhythm(double guests, String weekday, String saturday, String sunday) {
        this.guests = guests;
        this.byHour = new double[HOURS];
        for (int hour = 0; hour < HOURS; hour++) {
            int day = hour / 24;
            String row = day < 5 ? weekday : day == 5 ? saturday : sunday;
            byHour[hour] = (row.charAt(hour % 24) - '0') / 9.0;
        }
    }

    // one digit for each hour from midnight: 9 is the fullest hour
    static Rhythm of(SiteKind kind) {
        return switch (kind) {
            case CLINIC ->
                new Rhythm(0.4, "000000148997679986310000", "000000000000000000000000", "000000000000000000000000");
            case SHOP ->
                new Rhythm(0.6, "000000012345665567752000", "000000013578999887531000", "000000000000000000000000");
            case PIER ->
                new Rhythm(0.85, "000013786445654468642110", "000002457899998887654210", "000001346899999887643110");
            case SCHOOL ->
                new Rhythm(0.8, "000000159989786420000000", "000000000011100000000000", "000000000000000000000000");
            case HOTEL ->
                new Rhythm(0.9, "433333467643223356789975", "544333456765333457899986", "544333457876433345678754");
            case TIMBER_YARD ->
                new Rhythm(0.1, "000002799897899620000000", "000000455543000000000000", "000000000000000000000000");
            case OFFICE ->
                new Rhythm(0.2, "000000148999789986310000", "000000001111100000000000", "000000000000000000000000");
        };
    }

    /** Share of clients that are guests. */
    double guests() {
        return guests;
    }

    /** How full it is that many seconds into the local week, which begins with Monday. */
    double at(double secondOfWeek) {
        double hour = secondOfWeek / 3600;
        int from = (int) hour % HOURS;
        double share = hour - Math.floor(hour);
        return byHour[from] + (byHour[(from + 1) % HOURS] - byHour[from]) * share;
    }
}
