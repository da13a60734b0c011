package org.roundsman.reports;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * A stretch in which access points of a site were silent together, not planned. Cut to the stretch of the report. What comes and
 * goes for one cause is one outage, from the first time to the last.
 *
 * @param what the thing that failed, by name: a device, or the site itself
 * @param from first silent moment within the stretch
 * @param to end, exclusive; the end of the stretch, or the moment of the report, while it went on
 * @param ongoing it had not ended by then
 * @param begunBefore it had begun before the stretch
 * @param accessPoints how many of the site's were silent in it
 * @param wholeSite all of them were
 * @param silence time of all its access points together in which they were silent
 * @param times how often that was, 1 or more
 * @param people how many would have been on them, worked out when it began
 * @param personMinutes time that people were without, all together
 * @param noticed when we noticed; empty where nobody was told
 * @param taken when one of us took it on
 * @param replaced a unit was replaced because of it
 * @param alarmId where more stands about it
 */
public record Outage(
        long siteId,
        String site,
        ZoneId zone,
        Cause cause,
        String what,
        Instant from,
        Instant to,
        boolean ongoing,
        boolean begunBefore,
        int accessPoints,
        boolean wholeSite,
        Duration silence,
        int times,
        OptionalInt people,
        OptionalDouble personMinutes,
        Optional<Instant> noticed,
        Optional<Instant> taken,
        boolean replaced,
        OptionalLong alarmId) {

    /** What was behind it. The name is what reports store; never renamed. */
    public enum Cause {
        UPLINK,
        SWITCH,
        SWITCH_POWER,
        PORT_POWER,
        CABLE,
        DEVICE,
        RESTART,
        COMES_AND_GOES,
        /** It was looked into, and the evidence did not point to one thing. */
        NOT_SURE,
        /** Nobody looked into it. */
        NOT_WORKED_OUT
    }

    /** How long it lasted; of what comes and goes, for how long it was away in all. */
    @JsonIgnore
    public Duration length() {
        return cause == Cause.COMES_AND_GOES ? silence.dividedBy(accessPoints) : Duration.between(from, to);
    }
}
