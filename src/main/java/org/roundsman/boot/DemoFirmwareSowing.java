package org.roundsman.boot;

import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.demo.DemoDevice;
import org.roundsman.firmware.ExceptionDraft;
import org.roundsman.firmware.FirmwarePolicies;
import org.roundsman.firmware.MinimumDraft;
import org.roundsman.firmware.Release.Stand;
import org.roundsman.firmware.ReleaseDraft;
import org.roundsman.fleet.DeviceKind;

/**
 * Decides about the firmware of the invented fleet, and gives it a past of upgrades. A line that something is decided about is
 * left as it is, and so is a device whose firmware is known.
 */
@ApplicationScoped
class DemoFirmwareSowing {

    /** After those who enter models and lines. */
    private static final int LATE = 9_000;

    private static final String ADVISORY = "TR-ADV-2026-003 (invented)";

    private final FirmwarePolicies policies;
    private final DemoFirmwarePast past;
    private final Clock clock;

    @Inject
    DemoFirmwareSowing(FirmwarePolicies policies, DataSource database, Clock clock) {
        this.policies = policies;
        this.clock = clock;
        this.past = new DemoFirmwarePast(database);
    }

    void sown(@Observes @Priority(LATE) DemoSown event) {
        LocalDate first = event.first().atZone(ZoneOffset.UTC).toLocalDate();
        Map<Long, DeviceKind> lines = past.lines();
        lines.forEach((line, kind) -> {
            if (policies.find(line).orElseThrow().empty()) {
                decide(line, kind, first);
                if (kind == DeviceKind.ACCESS_POINT) {
                    special(line, event);
                }
            }
        });
        past.write(event);
    }

    private void decide(long line, DeviceKind kind, LocalDate first) {
        switch (kind) {
            case ACCESS_POINT -> {
                release(line, "6.4.2", Stand.RECOMMENDED, "", first.minusDays(75));
                release(line, "6.3.1", Stand.ACCEPTED, "", first.minusDays(190));
                release(line, "6.5.0", Stand.PILOT, "Runs at the pilot site first.", first.minusDays(9));
                withdraw(line, "5.9.13", "restarts under load, see " + ADVISORY, first.minusDays(120));
                policies.save(
                        line,
                        new MinimumDraft(null, "6.1.0", ADVISORY, "Invented: the set-up page answers strangers."));
            }
            case NETWORK_SWITCH -> {
                release(line, "3.1.0", Stand.RECOMMENDED, "", first.minusDays(140));
                withdraw(line, "2.7.1", "forgets its power budget (invented)", first.minusDays(200));
            }
            case GATEWAY -> release(line, "5.0.7", Stand.RECOMMENDED, "", first.minusDays(60));
        }
    }

    private void release(long line, String version, Stand stand, String note, LocalDate released) {
        policies.save(line, new ReleaseDraft(null, version, stand, note, null, released));
    }

    private void withdraw(long line, String version, String reason, LocalDate on) {
        policies.save(line, new ReleaseDraft(null, version, Stand.WITHDRAWN, reason, on, on.minusDays(400)));
    }

    /** The pilot site, and the customer who may keep the old release for a while. */
    private void special(long line, DemoSown event) {
        place(event, "castle-gate-ap-03").ifPresent(place -> policies.addPilot(line, place.siteId()));
        place(event, "exchange-ap-01")
                .ifPresent(place -> policies.except(
                        line,
                        new ExceptionDraft(
                                place.customerId(),
                                "5.9.13",
                                "The tills of the shop are certified with it until the new ones come (invented)",
                                LocalDate.now(clock).plusDays(45))));
    }

    private Optional<DemoFirmwarePast.Place> place(DemoSown event, String name) {
        return event.fleet().devices().stream()
                .filter(device -> device.name().equals(name))
                .map(DemoDevice::number)
                .filter(event.ids()::containsKey)
                .findFirst()
                .flatMap(number -> past.placeOf(event.ids().get(number)));
    }
}
