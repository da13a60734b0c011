package org.roundsman.triage.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.EndedCause;
import org.roundsman.triage.Finding;

/** Causes that were over a short while ago. Used by one thread. */
final class Endings {

    private static final Set<AlarmType> CAUSES =
            Set.of(AlarmType.DEVICE_SILENT, AlarmType.UPLINK_LOST, AlarmType.VIEW_LOST);

    /** A round takes a few seconds: two that were on their way at one time may end differently. */
    private static final Duration SLACK = Duration.ofSeconds(5);

    private final Map<AlarmKey, EndedCause> ended = new HashMap<>();

    /** By device that is the cause of an active alarm: who went down with it. */
    private final Map<Long, Set<Long>> fallen = new HashMap<>();

    /** By the same: whom its alarm takes down, and who of these is back since. Who turned out to have another cause is not. */
    private final Map<Long, Set<Long>> taken = new HashMap<>();

    /** After a start: what cleared a moment ago, and the active alarms that still point to it. */
    void recall(AlarmBook book, Map<AlarmKey, OpenAlarm> active, Instant now) {
        recallFallen(active);
        recallTaken(book, active);
        for (OpenAlarm cleared : book.recentlyCleared(CustomerScope.everyone(), now.minus(EndedCause.STARTING))) {
            Set<Long> affected = new HashSet<>();
            active.values().stream()
                    .filter(alarm -> alarm.causedBy().isPresent()
                            && alarm.causedBy().getAsLong() == cleared.id()
                            && alarm.key().resource().kind() == Resource.Kind.DEVICE)
                    .forEach(alarm -> affected.add(alarm.key().resource().id()));
            if (CAUSES.contains(cleared.key().type()) && !affected.isEmpty()) {
                add(cleared, affected, cleared.clearedAt().orElse(now));
            }
        }
    }

    /** After a start: who still points to an active alarm went down with its device. */
    private void recallFallen(Map<AlarmKey, OpenAlarm> active) {
        Map<Long, Long> causes = new HashMap<>();
        active.values().stream()
                .filter(alarm -> alarm.key().type() == AlarmType.DEVICE_SILENT)
                .forEach(alarm -> causes.put(alarm.id(), alarm.key().resource().id()));
        active.values().stream()
                .filter(alarm -> alarm.key().type() == AlarmType.DEVICE_SILENT)
                .filter(alarm -> alarm.causedBy().isPresent()
                        && causes.containsKey(alarm.causedBy().getAsLong()))
                .forEach(alarm -> fallen(causes.get(alarm.causedBy().getAsLong()))
                        .add(alarm.key().resource().id()));
    }

    /** After a start: who was said to suffer, also those whose own alarms are over. */
    private void recallTaken(AlarmBook book, Map<AlarmKey, OpenAlarm> active) {
        for (OpenAlarm alarm : active.values()) {
            if (alarm.key().type() == AlarmType.DEVICE_SILENT
                    && alarm.causedBy().isEmpty()) {
                Set<Long> affected = new HashSet<>();
                book.episodes(CustomerScope.everyone(), alarm.id(), Long.MAX_VALUE, 1)
                        .forEach(episode -> episode.affected().forEach(each -> affected.add(each.deviceId())));
                if (!affected.isEmpty()) {
                    long device = alarm.key().resource().id();
                    fallen(device).addAll(affected);
                    taken.put(device, Set.copyOf(affected));
                }
            }
        }
    }

    private Set<Long> fallen(long cause) {
        return fallen.computeIfAbsent(cause, made -> new HashSet<>());
    }

    /** Who went down with a device; who comes back stays among them until the device itself is back. */
    void remember(Finding finding) {
        if (isOfDevice(finding) && !finding.affected().isEmpty()) {
            fallen(finding.key().resource().id()).addAll(finding.affected());
        }
    }

    private static boolean isOfDevice(Finding finding) {
        return finding.key().type() == AlarmType.DEVICE_SILENT
                && finding.causedBy().isEmpty();
    }

    /**
     * All whom a cause took down: whom it explains now, and those of before who are back since, unless they came back by
     * themselves. Findings are remembered before.
     *
     * @param site devices of its site
     */
    Set<Long> taken(Finding finding, Map<Long, DeviceLook> site) {
        if (!isOfDevice(finding)) {
            return finding.affected();
        }
        long cause = finding.key().resource().id();
        Set<Long> with = fallen.getOrDefault(cause, Set.of());
        Set<Long> all = new HashSet<>(finding.affected());
        taken.getOrDefault(cause, Set.of()).stream()
                .filter(with::contains)
                .filter(device -> site.containsKey(device) && !site.get(device).lost())
                .forEach(all::add);
        taken.put(cause, Set.copyOf(all));
        return all;
    }

    Map<Long, Set<Long>> fallen() {
        return fallen;
    }

    /**
     * Those of one site. Who answered before its cause was asked in vain has come back by itself: it speaks against the cause
     * from then on, or each of its later answers would raise the same doubt again.
     */
    Map<Long, Set<Long>> fallen(Map<Long, DeviceLook> site) {
        Map<Long, Set<Long>> here = new HashMap<>();
        fallen.forEach((cause, devices) -> {
            DeviceLook look = site.get(cause);
            if (look != null) {
                devices.removeIf(device -> aloneBack(look, site.get(device)));
                here.put(cause, Set.copyOf(devices));
            }
        });
        return here;
    }

    private static boolean aloneBack(DeviceLook cause, DeviceLook device) {
        return device != null
                && device.heard()
                        .filter(at -> cause.lost()
                                && at.isAfter(cause.lostSince().orElseThrow().plus(SLACK))
                                && cause.askedSince(at))
                        .isPresent();
    }

    void add(OpenAlarm cause, Set<Long> affected, Instant at) {
        String name =
                switch (cause.key().type()) {
                    case UPLINK_LOST -> "the site's line or gateway";
                    case VIEW_LOST -> "our own view";
                    default -> cause.resourceName();
                };
        ended.put(cause.key(), new EndedCause(cause.key(), cause.cause(), name, at, affected));
    }

    /** Forgets what is over for long; what is active again is kept, since who did not come back in between belongs to it. */
    void tidy(Map<AlarmKey, OpenAlarm> active, Instant now) {
        ended.values().removeIf(each -> !each.recent(now) && !active.containsKey(each.key()));
        fallen.keySet().removeIf(device -> !active.containsKey(silence(device)));
        taken.keySet().removeIf(device -> !active.containsKey(silence(device)));
    }

    private static AlarmKey silence(long device) {
        return AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(device));
    }

    /** Those that took down any of these devices. */
    List<EndedCause> of(Set<Long> devices) {
        List<EndedCause> found = new ArrayList<>();
        for (EndedCause each : ended.values()) {
            if (each.affected().stream().anyMatch(devices::contains)) {
                found.add(each);
            }
        }
        return found;
    }

    /** What took that device down and is over since a moment ago. */
    Optional<EndedCause> recent(long device, Instant now) {
        return ended.values().stream()
                .filter(each -> each.recent(now) && each.affected().contains(device))
                .findFirst();
    }

    Set<Long> devices() {
        Set<Long> devices = new HashSet<>();
        ended.values().forEach(each -> devices.addAll(each.affected()));
        return devices;
    }
}
