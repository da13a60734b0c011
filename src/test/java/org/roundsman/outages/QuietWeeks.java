package org.roundsman.outages;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.SplittableRandom;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.readings.DeviceState;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.fold.Tuning;
import org.roundsman.topology.Attachment;
import org.roundsman.topology.How;
import org.roundsman.topology.SiteTree;
import org.roundsman.triage.CauseFinder;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.Finding;
import org.roundsman.triage.SiteSituation;

/**
 * Weeks of rounds of devices that are well, simulated without a network and without a clock: datagrams get lost by lot, and
 * each device restarts once a week. What comes of a round goes through the folds of spans and of rules, and from the states
 * of devices through cause finding, as it does in the service. The same seed always gives the same weeks.
 */
final class QuietWeeks {

    static final int SITES = 6;
    static final int ACCESS_POINTS = 9;
    static final Instant BEGIN = Instant.parse("2026-03-02T00:00:00Z");
    private static final Duration INTERVAL = Duration.ofMinutes(1);

    /**
     * What is simulated.
     *
     * @param loss share of datagrams that get lost, each way
     * @param planted a time in which a device answers nothing, though it is neither lost datagrams nor a restart
     */
    record Plan(double loss, int weeks, long seed, List<Planted> planted) {}

    /** Minutes from the begin; an end before which it is silent. */
    record Planted(long deviceId, long fromMinute, long toMinute) {}

    /**
     * What came of it.
     *
     * @param missed rounds that nobody answered
     * @param raised how often each alarm was raised, but for what follows
     * @param withRestart silences raised of a device that was just restarting: one lost round made its two minutes three rounds
     */
    record Tally(
            long rounds,
            long missed,
            long restarts,
            Map<AlarmKey, Integer> raised,
            Map<AlarmKey, Integer> withRestart) {}

    private final Plan plan;
    private final List<Site> sites = new ArrayList<>();
    private final Map<AlarmKey, Integer> raised = new HashMap<>();
    private final Map<AlarmKey, Integer> withRestart = new HashMap<>();

    private record Site(long id, List<WellDevice> devices, SiteTree tree, Map<AlarmKey, Finding> open) {}

    private QuietWeeks(Plan plan) {
        this.plan = plan;
        Tuning.Book book = new Tuning.Book(RuleSet.shipped());
        for (long site = 1; site <= SITES; site++) {
            sites.add(site(site, book));
        }
    }

    static Tally run(Plan plan) {
        return new QuietWeeks(plan).run();
    }

    /** A gateway, a switch on it, and access points on the switch. */
    private Site site(long id, Tuning.Book book) {
        List<WellDevice> devices = new ArrayList<>();
        for (int i = 0; i < ACCESS_POINTS + 2; i++) {
            DeviceKind kind =
                    i == 0 ? DeviceKind.GATEWAY : i == 1 ? DeviceKind.NETWORK_SWITCH : DeviceKind.ACCESS_POINT;
            devices.add(new WellDevice(
                    id * 100 + i, kind, plan, new SplittableRandom(plan.seed() * 7919 + id * 100 + i), book));
        }
        List<SiteTree.Item> items = devices.stream()
                .map(d -> new SiteTree.Item(d.id(), d.name(), d.kind(), place(d)))
                .toList();
        devices.sort(Comparator.comparingLong(WellDevice::phaseMillis));
        return new Site(id, devices, SiteTree.of(items, (device, port) -> Optional.empty()), new HashMap<>());
    }

    private static Attachment place(WellDevice device) {
        if (device.kind() == DeviceKind.GATEWAY) {
            return Attachment.unknown(device.id(), "", List.of());
        }
        long above = device.kind() == DeviceKind.NETWORK_SWITCH ? device.id() - 1 : device.id() / 100 * 100 + 1;
        return new Attachment(
                device.id(),
                OptionalLong.of(above),
                OptionalInt.of((int) (device.id() % 100)),
                "",
                How.LLDP,
                "",
                List.of(),
                false,
                Optional.of(BEGIN));
    }

    private Tally run() {
        long minutes = plan.weeks() * 7L * 24 * 60;
        for (long minute = 0; minute < minutes; minute++) {
            for (Site site : sites) {
                for (WellDevice device : site.devices()) {
                    Instant at = BEGIN.plusMillis(minute * INTERVAL.toMillis() + device.phaseMillis());
                    device.round(at, minute).forEach(key -> raised.merge(key, 1, Integer::sum));
                    triage(site, at);
                }
            }
        }
        List<WellDevice> all = sites.stream().flatMap(s -> s.devices().stream()).toList();
        return new Tally(
                all.size() * minutes,
                all.stream().mapToLong(WellDevice::missed).sum(),
                all.stream().mapToLong(WellDevice::restarts).sum(),
                Map.copyOf(raised),
                Map.copyOf(withRestart));
    }

    /** Nothing can be found where nobody is silent. */
    private void triage(Site site, Instant now) {
        if (site.open().isEmpty() && site.devices().stream().noneMatch(WellDevice::silent)) {
            return;
        }
        Map<Long, DeviceLook> looks = new HashMap<>();
        for (WellDevice device : site.devices()) {
            Optional<DeviceState> state = device.state();
            looks.put(
                    device.id(), DeviceLook.of(device.id(), device.name(), device.kind(), false, INTERVAL, state, now));
        }
        SiteSituation situation =
                new SiteSituation(site.id(), ZoneOffset.UTC, site.tree(), looks, Map.of(), List.of(), Map.of(), now);
        Map<AlarmKey, Finding> found = new HashMap<>();
        CauseFinder.find(situation).forEach(finding -> found.put(finding.key(), finding));
        found.keySet().stream()
                .filter(key -> !site.open().containsKey(key))
                .forEach(key -> (restarts(site, key, now) ? withRestart : raised).merge(key, 1, Integer::sum));
        site.open().clear();
        site.open().putAll(found);
    }

    private static boolean restarts(Site site, AlarmKey key, Instant now) {
        return key.type() == AlarmType.DEVICE_SILENT
                && site.devices().stream()
                        .anyMatch(device -> device.id() == key.resource().id() && device.restartsAt(now));
    }
}
