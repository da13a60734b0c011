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
            return trouble(Condition.SILENT, of(row.silent(), all) + "silent", row.silent(), row, now);
        }
        if (row.refusing() > 0) {
            return trouble(Condition.REFUSING, of(row.refusing(), all) + "refusing", row.refusing(), row, now);
        }
        if (row.otherTrouble() > 0) {
            return trouble(Condition.SILENT, "switch or gateway", row.otherTrouble(), row, now);
        }
        if (row.answering() == 0) {
            return State.of(Condition.UNWATCHED, "unwatched", Optional.empty(), now);
        }
        return State.of(Condition.ANSWERING, of(row.answering(), all) + "answering", Optional.empty(), now);
    }

    /**
     * With the time of the one device of the site that has been in trouble longest. That is the time of those counted only
     * where it is one alone; and where other devices of the site are in trouble too, it may be one of them.
     *
     * @param counted how many devices the text is about
     */
    private static State trouble(Condition condition, String text, int counted, SiteRow row, Instant now) {
        State state = State.of(condition, text, row.troubleSince(), now);
        int inTrouble = row.silent() + row.refusing() + row.otherTrouble();
        if (inTrouble == 1 || state.since().isEmpty()) {
            return state;
        }
        String whose = counted == inTrouble ? "the longest " : "trouble ";
        return new State(state.word(), state.text(), whose + state.since(), state.at());
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
