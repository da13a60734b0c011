package org.roundsman.reports;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One site over the stretch of a report, by its own clock.
 *
 * @param zone IANA name
 * @param target for how much of its service hours its Wi-Fi was to be there, in percent
 * @param length of the stretch: a month has 743, 744 or 745 hours where clocks are turned
 * @param serviceHours how much of it were service hours, without work planned for the site
 * @param accessPoints how many it has
 * @param since first day in the fleet, where that lies within the stretch: what was before is not counted
 * @param whole around the clock
 * @param service in service hours; the whole stretch where the site has none
 * @param days each day of the stretch, in order
 */
public record SiteFigures(
        long siteId,
        String site,
        String town,
        ZoneId zone,
        double target,
        Duration length,
        Duration serviceHours,
        int accessPoints,
        Optional<LocalDate> since,
        Watch whole,
        Watch service,
        List<Day> days,
        Crowd crowd) {

    public SiteFigures {
        days = List.copyOf(days);
    }

    /**
     * One day by the site's clock.
     *
     * @param length 23, 24 or 25 hours, or what lies between
     * @param watch around the clock
     */
    public record Day(LocalDate date, Duration length, Watch watch) {}

    /** For how long the whole site may be down in its service hours without missing the target. */
    @JsonIgnore
    public Duration allowed() {
        return Duration.ofMillis(Math.round(serviceHours.toMillis() * (100 - target) / 100));
    }

    /** For how long the whole site would have been down in its service hours if all silence had come at once; empty if unknown. */
    @JsonIgnore
    public Optional<Duration> lost() {
        OptionalDouble share = service.share();
        return share.isEmpty()
                ? Optional.empty()
                : Optional.of(Duration.ofMillis(Math.round(serviceHours.toMillis() * (1 - share.getAsDouble()))));
    }

    /** Whether the target was met; empty when that is not known. */
    @JsonIgnore
    public Optional<Boolean> met() {
        OptionalDouble share = service.share();
        return share.isEmpty() ? Optional.empty() : Optional.of(share.getAsDouble() * 100 >= target);
    }
}
