package org.roundsman.web.fleet;

import io.quarkus.qute.RawString;
import java.time.Instant;
import java.time.ZoneId;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Outcome;
import org.roundsman.readings.DeviceRow;
import org.roundsman.web.chart.RibbonPicture;
import org.roundsman.web.page.State;
import org.roundsman.web.page.Words;

/**
 * A device in a list, as it is shown.
 *
 * @param cause why it does not answer, or empty
 */
public record DeviceLine(
        long id,
        String name,
        String kind,
        String place,
        long siteId,
        String site,
        long customerId,
        String customer,
        State state,
        String cause,
        RawString ribbon,
        String clients,
        BusiestLine busiest,
        String model,
        FlagPair flags) {

    /** Names up to here stand on one line in a table; longer ones would make it too wide. */
    private static final int SHORT_NAME = 20;

    /** Whether its name is short enough to stay on one line. */
    public boolean hasShortName() {
        return name.length() <= SHORT_NAME;
    }

    /** The line of that row. */
    public static DeviceLine of(DeviceRow row, FlagPair flags, Instant now) {
        return new DeviceLine(
                row.deviceId(),
                row.name(),
                row.kind().word(),
                row.place(),
                row.siteId(),
                row.site(),
                row.customerId(),
                row.customer(),
                state(row, now),
                cause(row),
                RibbonPicture.of(row.ribbon(), "d" + row.deviceId(), row.name(), ZoneId.of(row.timeZone())),
                Words.count(row.clients()),
                BusiestLine.of(row.busiest(), false),
                row.model(),
                flags);
    }

    /** Its condition; a paused device is unwatched because a person said so. */
    public static State state(DeviceRow row, Instant now) {
        return row.paused() && row.condition() == Condition.UNWATCHED
                ? State.of(Condition.UNWATCHED, "paused", row.since(), now)
                : State.of(row.condition(), row.since(), now);
    }

    private static String cause(DeviceRow row) {
        boolean trouble = row.condition() == Condition.SILENT || row.condition() == Condition.REFUSING;
        return trouble
                ? row.outcome()
                        .filter(o -> o.kind() != Outcome.Kind.ANSWERED)
                        .map(Outcome::text)
                        .orElse("")
                : "";
    }
}
