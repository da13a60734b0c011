package org.roundsman.web.device;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.DeviceFacts;
import org.roundsman.readings.DeviceHistory;
import org.roundsman.readings.DeviceRow;
import org.roundsman.readings.FleetBoard;
import org.roundsman.web.page.Trouble;

/** Asks for what a device's page shows. */
@ApplicationScoped
class DeviceViews {

    private static final Duration SPANS_SHOWN = Duration.ofDays(7);

    private final FleetBoard fleet;
    private final DeviceHistory history;
    private final DeviceFacts facts;
    private final Trouble trouble;
    private final Clock clock;

    DeviceViews(FleetBoard fleet, DeviceHistory history, DeviceFacts facts, Trouble trouble, Clock clock) {
        this.fleet = fleet;
        this.history = history;
        this.facts = facts;
        this.trouble = trouble;
        this.clock = clock;
    }

    Optional<DeviceView> view(CustomerScope scope, long deviceId) {
        return fleet.device(scope, deviceId).map(this::view);
    }

    private DeviceView view(DeviceRow row) {
        Instant now = clock.instant();
        long id = row.deviceId();
        return new DeviceView(
                row,
                history.lastAnswered(id),
                history.spans(id, now.minus(SPANS_SHOWN), now),
                history.availability(id, now.minus(SPANS_SHOWN), now),
                facts.of(id),
                facts.radios(id),
                trouble.behind().orElse(""),
                now);
    }
}
