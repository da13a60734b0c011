package org.roundsman.web.reports;

import java.time.ZoneId;
import org.roundsman.dispatch.ReportLinks;
import org.roundsman.web.page.Words;

/**
 * A link to a report in words; the link itself is shown once only.
 *
 * @param opened how often, and when last
 * @param revocable nobody took it back yet
 */
record LinkLine(long id, String made, String until, String opened, boolean revocable) {

    static LinkLine of(ReportLinks.Link link, ZoneId zone) {
        String opened = link.opened() == 0
                ? "never"
                : Words.many(link.opened(), "time", "times")
                        + link.openedAt()
                                .map(at -> ", last " + Periods.moment(at, zone))
                                .orElse("");
        return new LinkLine(
                link.id(),
                Periods.moment(link.madeAt(), zone) + " by " + link.madeBy(),
                link.revokedAt()
                        .map(at -> "taken back " + Periods.moment(at, zone))
                        .orElse("until " + Periods.moment(link.until(), zone)),
                opened,
                link.revokedAt().isEmpty());
    }
}
