package org.roundsman.warranty;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/** How the warranty of a unit stands on a day. */
public enum CoverStatus {
    ENDS_WITHIN_30("ends within 30 days", 30),
    ENDS_WITHIN_60("ends within 60 days", 60),
    ENDS_WITHIN_90("ends within 90 days", 90),
    ENDS_WITHIN_180("ends within 180 days", 180),
    /** For more than 180 days, or without an end. */
    COVERED("covered", -1),
    ENDED("ended", -1),
    /** The terms, or the date from which they count, are not known. */
    MISSING("terms or date missing", -1);

    private final String word;
    private final int days;

    CoverStatus(String word, int days) {
        this.word = word;
        this.days = days;
    }

    public String word() {
        return word;
    }

    /**
     * The status of cover that has an end.
     *
     * @param lastDay the last day that is covered
     * @param today in the time zone of the site
     */
    public static CoverStatus of(LocalDate lastDay, LocalDate today) {
        long left = ChronoUnit.DAYS.between(today, lastDay);
        if (left < 0) {
            return ENDED;
        }
        for (CoverStatus status : values()) {
            if (left <= status.days) {
                return status;
            }
        }
        return COVERED;
    }
}
