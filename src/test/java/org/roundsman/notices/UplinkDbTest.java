package org.roundsman.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmDesk;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.Impact;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.alarms.Verdict;
import org.roundsman.audit.Actor;

/** A site of 200 access points loses its uplink: from signals through the real alarm desk to what arrives. */
class UplinkDbTest {

    private static final int MANY = 200;

    private NoticeFixture f;
    private AlarmDesk desk;
    private Surroundings at;
    private long site;
    private List<AlarmKey> silent;

    @BeforeEach
    void aHouse() {
        f = new NoticeFixture("uplink", TestConfig.usual());
        f.person("wren");
        site = f.id(
                "insert into site (customer_id, name, time_zone) values (?, 'Brackwater', 'Europe/Berlin') returning"
                        + " id",
                f.customer);
        long keys = f.id("insert into credential (name, version, community) values ('test', 2, '\\x00') returning id");
        silent = new ArrayList<>();
        for (int i = 1; i <= MANY; i++) {
            silent.add(AlarmKey.of(
                    AlarmType.DEVICE_SILENT,
                    Resource.device(f.id(
                            "insert into device (credential_id, site_id, name, kind, host) values (?, ?, ?,"
                                    + " 'ACCESS_POINT', ?) returning id",
                            keys,
                            site,
                            "AP " + i,
                            "192.0.2." + i))));
        }
        desk = new AlarmDesk(f.database, f.clock, Actor::itself, changed -> {});
        at = f.with(new BookedAlarms(new AlarmBook(f.database)));
    }

    private void run() {
        new Telling(at).run();
        f.sending().claim(1_000).forEach(f.sending()::attempt);
    }

    private void signal(AlarmKey key, boolean raise) {
        Instant now = f.clock.instant();
        Signal signal = raise
                ? new Signal.Raise(key, Severity.MAJOR, now.minusSeconds(180), now, "Silent.")
                : new Signal.Clear(key, now, "Answers again.");
        desk.accept(List.of(signal));
    }

    private static Verdict verdict(AlarmKey key, CauseKind cause, Optional<AlarmKey> by, boolean settled) {
        Impact impact = new Impact(OptionalInt.of(40), OptionalInt.of(260), OptionalInt.empty(), 1, true);
        return new Verdict(key, cause, by, List.of("The gateway last answered 10:41:12."), impact, Set.of(), settled);
    }

    @Test
    void twoHundredAccessPointsBehindALostUplinkMakeOneMessageAndOneMoreWhenItIsOver() {
        AlarmKey uplink = AlarmKey.of(AlarmType.UPLINK_LOST, Resource.site(site));
        for (AlarmKey key : silent) {
            signal(key, true);
        }
        desk.accept(
                List.of(),
                silent.stream()
                        .map(key -> verdict(key, CauseKind.NOT_SURE, Optional.empty(), false))
                        .toList());
        run();
        assertThat(f.arrived).as("the cause is being worked out").isEmpty();
        f.clock.forward(java.time.Duration.ofSeconds(30));
        signal(uplink, true);
        List<Verdict> verdicts = new ArrayList<>();
        verdicts.add(verdict(uplink, CauseKind.UPLINK_LOST, Optional.empty(), true));
        silent.forEach(key -> verdicts.add(verdict(key, CauseKind.UPLINK_LOST, Optional.of(uplink), true)));
        desk.accept(List.of(), verdicts);
        run();
        f.clock.forward(java.time.Duration.ofMinutes(90));
        run();
        assertThat(f.kinds()).containsExactly("raise");
        assertThat(f.arrived.get(0).content().subject())
                .isEqualTo("[invented] Site cannot be reached at Brackwater (Saltmarsh Ferry Line): uplink or gateway"
                        + " lost");
        assertThat(f.arrived.get(0).content().sections().toString()).contains("200 other alarms come from this one");
        signal(uplink, false);
        silent.forEach(key -> signal(key, false));
        run();
        f.clock.forward(java.time.Duration.ofMinutes(11));
        run();
        run();
        assertThat(f.kinds()).containsExactly("raise", "clear");
    }
}
