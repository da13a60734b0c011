package org.roundsman.web.device;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.Devices;
import org.roundsman.shared.Page;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.EventKind;
import org.roundsman.timeline.Timeline;
import org.roundsman.traps.UnnamedNotifications;
import org.roundsman.traps.UnnamedNotifications.Unnamed;
import org.roundsman.web.page.Words;

/** Asks for what happened to a device. */
@ApplicationScoped
class HappenedViews {

    private static final int SIZE = 10;

    private final Devices devices;
    private final Timeline timeline;
    private final UnnamedNotifications unnamed;

    HappenedViews(Devices devices, Timeline timeline, UnnamedNotifications unnamed) {
        this.devices = devices;
        this.timeline = timeline;
        this.unnamed = unnamed;
    }

    /** What is asked for: a sort of events or all (empty, or a sort that there is not), and a page. */
    record Wish(String kind, int page) {
        static final Wish FIRST = new Wish("", 1);
    }

    /** Whether something happened that is not in what was seen; empty when there is no such device in the scope. */
    Optional<Boolean> news(CustomerScope scope, long deviceId, String seen) {
        return devices.find(scope, deviceId)
                .map(device -> !stamp(deviceId, unnamed.of(deviceId)).equals(seen));
    }

    /** Empty when there is no such device in the scope. */
    Optional<Happened> view(CustomerScope scope, long deviceId, Wish wish) {
        return devices.find(scope, deviceId).map(device -> view(device, wish));
    }

    private Happened view(Device device, Wish wish) {
        long id = device.id;
        ZoneId zone = device.site.zone();
        Optional<Unnamed> without = unnamed.of(id);
        // asked before the events: what comes in between is news again
        String stamp = stamp(id, without);
        EventKind kind = kind(wish.kind());
        Page<DeviceEvent> events = timeline.page(id, kind, wish.page(), SIZE);
        List<HappenedLine> lines = events.items().stream()
                .map(event -> HappenedLine.of(event, zone))
                .toList();
        return new Happened(
                id,
                device.name,
                kind == null ? "" : kind.name(),
                stamp,
                choices(timeline.counts(id), kind),
                new Page<>(lines, events.number(), events.size(), events.total()),
                without.map(u -> words(u, zone)).orElse(""));
    }

    private String stamp(long deviceId, Optional<Unnamed> without) {
        return timeline.last(deviceId) + "-" + without.map(Unnamed::count).orElse(0L);
    }

    private static EventKind kind(String name) {
        return Arrays.stream(EventKind.values())
                .filter(k -> k.name().equals(name))
                .findFirst()
                .orElse(null);
    }

    private static List<Happened.Choice> choices(Map<EventKind, Long> counts, EventKind chosen) {
        List<Happened.Choice> choices = new ArrayList<>();
        long all = counts.values().stream().mapToLong(Long::longValue).sum();
        choices.add(new Happened.Choice("", "all", Words.count(all), chosen == null));
        for (EventKind kind : EventKind.values()) {
            long count = counts.getOrDefault(kind, 0L);
            if (count > 0 || kind == chosen) {
                choices.add(new Happened.Choice(kind.name(), kind.word(), Words.count(count), kind == chosen));
            }
        }
        return choices;
    }

    private static String words(Unnamed without, ZoneId zone) {
        boolean one = without.count() == 1;
        return Words.many(without.count(), "notification", "notifications")
                + (one ? " that no profile names was" : " that no profile names were") + " only counted; the last was "
                + without.lastOid() + " on " + Words.second(without.last(), zone) + ".";
    }
}
