package org.roundsman.web.reports;

import java.time.ZoneId;
import java.util.List;
import org.roundsman.dispatch.ReportMails;
import org.roundsman.web.page.Words;

/**
 * A mail of a report in words.
 *
 * @param key name of its shape
 * @param when what happened or comes next
 * @param why it did not arrive, or empty
 * @param taken a mail server took it, so that it may still come back
 */
record MailLine(long id, String to, String key, String state, String when, String why, boolean taken) {

    static MailLine of(ReportMails.Line line, ZoneId zone) {
        boolean taken = line.state() == ReportMails.State.SENT;
        return new MailLine(
                line.id(), line.to(), key(line.state()), line.state().word(), when(line, zone), line.why(), taken);
    }

    /** Those that did not arrive. */
    static List<MailLine> undelivered(List<ReportMails.Line> lines, ZoneId zone) {
        return lines.stream()
                .filter(line -> line.state() == ReportMails.State.FAILED || line.state() == ReportMails.State.BOUNCED)
                .map(line -> of(line, zone))
                .toList();
    }

    private static String key(ReportMails.State state) {
        return switch (state) {
            case WAITING -> "sending";
            case SENT -> "sent";
            case FAILED, BOUNCED -> "failed";
        };
    }

    private static String when(ReportMails.Line line, ZoneId zone) {
        if (line.sentAt().isPresent()) {
            return "taken by the mail server " + Periods.moment(line.sentAt().get(), zone);
        }
        String tries = line.attempts() == 0 ? "not tried yet" : Words.many(line.attempts(), "attempt", "attempts");
        return tries
                + line.nextAt().map(at -> ", next " + Periods.moment(at, zone)).orElse("");
    }
}
