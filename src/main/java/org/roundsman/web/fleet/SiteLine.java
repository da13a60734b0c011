package org.roundsman.web.fleet;

import io.quarkus.qute.RawString;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import org.roundsman.measure.Condition;
import org.roundsman.readings.SiteRow;
import org.roundsman.web.chart.RibbonPicture;
import org.roundsman.web.page.State;
import org.roundsman.web.page.Words;

/** A site in the list, as it is shown. */
public record SiteLine(
        long id,
        String name,
        long customerId,
        String customer,
        State state,
        String others,
        RawString ribbon,
        String clients,
        BusiestLine busiest,
        FlagPair flags) {

    /** The line of that row. */
    public static SiteLine of(SiteRow row, FlagPair flags, Instant now) {
        return new SiteLine(
                row.siteId(),
                row.site(),
                row.customerId(),
                row.customer(),
                state(row, now),
                others(row),
                RibbonPicture.of(row.ribbon(), "s" + row.siteId(), row.site(), ZoneId.of(row.timeZone())),
                Words.count(row.clients()),
                BusiestLine.of(row.busiest(), true),
                flags);
    }

    /** The worst of what its access points are in; switches and gateways in trouble count as silence does. */
    public static State state(SiteRow row, Instant now) {
        int all = row.accessPoints();
        if (row.silent() > 0) {
            return State.of(Condition.SILENT, of(row.silent(), all) + "silent", row.troubleSince(), now);
        }
        if (row.refusing() > 0) {
            return State.of(Condition.REFUSING, of(row.refusing(), all) + "refusing", row.troubleSince(), now);
        }
        if (row.otherTrouble() > 0) {
            return State.of(Condition.SILENT, "switch or gateway", row.troubleSince(), now);
        }
        if (row.answering() == 0) {
            return State.of(Condition.UNWATCHED, "unwatched", Optional.empty(), now);
        }
        return State.of(Condition.ANSWERING, of(row.answering(), all) + "answering", Optional.empty(), now);
    }

    /** What stands before the condition; nothing where there is one access point only. */
    private static String of(int some, int all) {
        if (some == all) {
            return all == 1 ? "" : "all " + all + " ";
        }
        return some + " of " + all + " ";
    }

    private static String others(SiteRow row) {
        return row.otherTrouble() == 0
                ? ""
                : row.otherTrouble() + " of "
                        + Words.many(row.otherDevices(), "switch or gateway", "switches and gateways") + " in trouble";
    }
}
