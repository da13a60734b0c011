package org.roundsman.dispatch;

import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import org.roundsman.reports.ReportLook;

/**
 * When and how a customer's reports are made.
 *
 * @param active the past month is built by itself
 * @param day of the month, 1 to 28
 * @param hour of the clock in {@code zone}, 0 to 23
 * @param recipients mail addresses
 * @param approval somebody has to find it good before it is sent
 * @param costs whether list prices are shown
 * @param keepMonths for how long reports are kept after their last day, 6 to 120
 */
public record ReportPlan(
        long customerId,
        boolean active,
        int day,
        int hour,
        ZoneId zone,
        Locale language,
        ReportLook.PaperSize paper,
        List<String> recipients,
        boolean approval,
        boolean costs,
        int keepMonths) {

    public ReportPlan {
        recipients = List.copyOf(recipients);
    }
}
