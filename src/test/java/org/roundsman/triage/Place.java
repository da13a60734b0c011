package org.roundsman.triage;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.Resource;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Outcome;
import org.roundsman.topology.Attachment;
import org.roundsman.topology.How;
import org.roundsman.topology.Port;
import org.roundsman.topology.PortState;
import org.roundsman.topology.Power;
import org.roundsman.topology.PowerMatch;
import org.roundsman.topology.PowerState;
import org.roundsman.topology.SiteTree;

/** An invented site at 10:44:00 local time; every device answers each minute unless something else is said. */
final class Place {

    static final long SITE = 77;
    static final ZoneId ZONE = ZoneId.of("Europe/Berlin");
    static final LocalDate DAY = LocalDate.of(2026, 3, 10);

    private record Hangs(long on, Integer port, boolean old) {}

    private final Map<Long, DeviceLook> looks = new LinkedHashMap<>();
    private final Map<Long, Hangs> hangs = new HashMap<>();
    private final Map<String, Port> ports = new HashMap<>();
    private final Map<Long, Instant> portsRead = new HashMap<>();
    private final List<EndedCause> ended = new ArrayList<>();
    private final Map<Long, Set<Long>> fallen = new HashMap<>();
    private Instant now = at("10:44:00");

    static Instant at(String local) {
        return DAY.atTime(LocalTime.parse(local)).atZone(ZONE).toInstant();
    }

    static AlarmKey silence(long device) {
        return AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(device));
    }

    static AlarmKey uplink() {
        return AlarmKey.of(AlarmType.UPLINK_LOST, Resource.site(SITE));
    }

    Place gateway(long id) {
        return device(id, "gw-" + id, DeviceKind.GATEWAY);
    }

    Place bridge(long id) {
        return device(id, "sw-" + id, DeviceKind.NETWORK_SWITCH);
    }

    Place point(long id) {
        return device(id, "ap-" + id, DeviceKind.ACCESS_POINT);
    }

    private Place device(long id, String name, DeviceKind kind) {
        Optional<Instant> answered = Optional.of(at("10:43:50"));
        looks.put(
                id,
                new DeviceLook(
                        id,
                        name,
                        kind,
                        Standing.ANSWERS,
                        Duration.ofMinutes(1),
                        Optional.empty(),
                        answered,
                        answered,
                        0,
                        Optional.empty()));
        return this;
    }

    Place points(long from, long to, long on) {
        for (long id = from; id <= to; id++) {
            point(id).hangs(id, on, (int) (id - from + 1));
        }
        return this;
    }

    Place hangs(long id, long on, int port) {
        hangs.put(id, new Hangs(on, port, false));
        return this;
    }

    Place hangsSomewhere(long id, long on) {
        hangs.put(id, new Hangs(on, null, false));
        return this;
    }

    Place hungOnce(long id, long on, int port) {
        hangs.put(id, new Hangs(on, port, true));
        return this;
    }

    Place now(String local) {
        now = at(local);
        return this;
    }

    /** Silent since that round; it answered the one before. */
    Place silent(long id, String since) {
        return silent(id, at(since), at(since).minusSeconds(60));
    }

    Place silent(long id, Instant since, Instant heard) {
        return stands(id, Standing.SILENT, Optional.of(since), Optional.of(heard), 3);
    }

    Place silent(long from, long to, String since) {
        for (long id = from; id <= to; id++) {
            silent(id, since);
        }
        return this;
    }

    Place missing(long id, int misses, String since) {
        Instant first = at(since);
        return stands(id, Standing.MISSING, Optional.of(first), Optional.of(first.minusSeconds(60)), misses);
    }

    Place heard(long id, String at) {
        return stands(id, Standing.ANSWERS, Optional.empty(), Optional.of(at(at)), 0);
    }

    Place refuses(long id) {
        return stands(id, Standing.REFUSES, Optional.empty(), Optional.of(at("10:43:50")), 0);
    }

    Place unwatched(long id) {
        return stands(id, Standing.UNWATCHED, Optional.empty(), Optional.of(at("09:00:00")), 0);
    }

    private Place stands(long id, Standing standing, Optional<Instant> since, Optional<Instant> heard, int misses) {
        DeviceLook was = looks.get(id);
        Optional<Instant> asked = standing.heard() ? heard : Optional.of(now);
        looks.put(
                id,
                new DeviceLook(
                        id,
                        was.name(),
                        was.kind(),
                        standing,
                        was.interval(),
                        since,
                        heard,
                        asked,
                        misses,
                        Optional.empty()));
        return this;
    }

    Place every(long id, Duration interval) {
        DeviceLook was = looks.get(id);
        looks.put(
                id,
                new DeviceLook(
                        id,
                        was.name(),
                        was.kind(),
                        was.standing(),
                        interval,
                        was.lostSince(),
                        was.heard(),
                        was.asked(),
                        was.misses(),
                        was.outcome()));
        return this;
    }

    Place says(long id, Outcome outcome) {
        DeviceLook was = looks.get(id);
        looks.put(
                id,
                new DeviceLook(
                        id,
                        was.name(),
                        was.kind(),
                        was.standing(),
                        was.interval(),
                        was.lostSince(),
                        was.heard(),
                        was.asked(),
                        was.misses(),
                        Optional.of(outcome)));
        return this;
    }

    /** Who went down with it, as was found before. */
    Place fallen(long cause, Long... devices) {
        fallen.put(cause, Set.of(devices));
        return this;
    }

    /** Its last round began then. */
    Place asked(long id, String at) {
        DeviceLook was = looks.get(id);
        looks.put(
                id,
                new DeviceLook(
                        id,
                        was.name(),
                        was.kind(),
                        was.standing(),
                        was.interval(),
                        was.lostSince(),
                        was.heard(),
                        Optional.of(at(at)),
                        was.misses(),
                        was.outcome()));
        return this;
    }

    Place port(long device, int number, PortState state) {
        return port(device, number, state, Optional.empty());
    }

    Place port(long device, int number, PortState state, PowerState power) {
        return port(device, number, state, power, power != PowerState.DISABLED, PowerMatch.INTERFACE);
    }

    Place port(long device, int number, PortState state, PowerState power, boolean enabled, PowerMatch match) {
        OptionalInt powerClass = power == PowerState.DELIVERING ? OptionalInt.of(4) : OptionalInt.empty();
        return port(device, number, state, Optional.of(new Power(1, number, power, powerClass, enabled, match)));
    }

    private Place port(long device, int number, PortState state, Optional<Power> power) {
        ports.put(
                device + ":" + number,
                new Port(
                        number,
                        String.valueOf(number),
                        "",
                        "",
                        "",
                        Port.ETHERNET,
                        OptionalInt.empty(),
                        OptionalLong.empty(),
                        state,
                        1,
                        power,
                        true));
        return this;
    }

    Place read(long device, String local) {
        portsRead.put(device, at(local));
        return this;
    }

    Place ended(AlarmKey key, CauseKind cause, String name, String at, Set<Long> affected) {
        ended.add(new EndedCause(key, cause, name, at(at), affected));
        return this;
    }

    SiteTree tree() {
        List<SiteTree.Item> items = looks.values().stream()
                .map(look -> new SiteTree.Item(look.deviceId(), look.name(), look.kind(), place(look.deviceId())))
                .toList();
        return SiteTree.of(items, (device, number) -> Optional.ofNullable(ports.get(device + ":" + number)));
    }

    private Attachment place(long id) {
        Hangs place = hangs.get(id);
        if (place == null) {
            return Attachment.unknown(id, "", List.of());
        }
        return new Attachment(
                id,
                OptionalLong.of(place.on),
                place.port == null ? OptionalInt.empty() : OptionalInt.of(place.port),
                "",
                How.LLDP,
                "",
                List.of(),
                place.old,
                Optional.of(at("10:30:00")));
    }

    SiteSituation situation() {
        return new SiteSituation(SITE, ZONE, tree(), looks, portsRead, ended, fallen, now);
    }

    List<Finding> findings() {
        return CauseFinder.find(situation());
    }

    Finding finding(AlarmKey key) {
        return findings().stream()
                .filter(finding -> finding.key().equals(key))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no finding of " + key + " in " + findings()));
    }

    Finding finding(long device) {
        return finding(silence(device));
    }

    /** The only finding that nothing else explains. */
    Finding cause() {
        List<Finding> causes = findings().stream()
                .filter(finding -> finding.causedBy().isEmpty())
                .toList();
        if (causes.size() != 1) {
            throw new AssertionError("one cause expected, not " + causes);
        }
        return causes.get(0);
    }
}
