package org.roundsman.web.triage;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Devices;
import org.roundsman.planned.PlannedWork;
import org.roundsman.planned.Stretch;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.EventKind;
import org.roundsman.timeline.EventSearch;
import org.roundsman.topology.Topology;
import org.roundsman.topology.TreeNode;
import org.roundsman.web.page.Words;

/** What changed at the affected devices and at those above them in the hour before an alarm. */
@ApplicationScoped
class Before {

    private static final Duration HOUR = Duration.ofHours(1);
    private static final int MOST = 12;
    private static final int MOST_READ = 200;

    private final Devices devices;
    private final Topology topology;
    private final EventSearch events;
    private final PlannedWork planned;

    Before(Devices devices, Topology topology, EventSearch events, PlannedWork planned) {
        this.devices = devices;
        this.topology = topology;
        this.events = events;
        this.planned = planned;
    }

    /**
     * The newest first; of a site with very much going on, the latest of it. Counts up to the moment of the raise, since what
     * is found out then belongs to the time before.
     *
     * @param explained alarms that this one explains
     */
    List<BeforeLine> of(CustomerScope scope, OpenAlarm alarm, List<OpenAlarm> explained) {
        if (alarm.siteId().isEmpty()) {
            return List.of();
        }
        long site = alarm.siteId().getAsLong();
        ZoneId zone = alarm.zone();
        Instant from = alarm.began().minus(HOUR);
        Instant to = alarm.raised().plusMillis(1);
        Map<Long, String> names = devices.ofSite(scope, site).stream()
                .collect(Collectors.toMap(device -> device.id, device -> device.name));
        Set<Long> asked = alarm.key().resource().kind() == Resource.Kind.SITE
                ? names.keySet()
                : concerned(scope, alarm, explained);
        List<BeforeLine> lines = new ArrayList<>(work(alarm, site, from, to));
        events.between(asked, from, to, MOST_READ).stream()
                .filter(event -> !firstRead(event))
                .limit(MOST)
                .map(event -> line(event, names.getOrDefault(event.deviceId(), ""), zone))
                .forEach(lines::add);
        return lines;
    }

    /** What was read for the first time did not change by that. */
    private static boolean firstRead(DeviceEvent event) {
        return event.kind() == EventKind.FACT_CHANGED && event.old().isEmpty();
    }

    private Set<Long> concerned(CustomerScope scope, OpenAlarm alarm, List<OpenAlarm> explained) {
        Set<Long> asked = new LinkedHashSet<>();
        topology.pathUp(scope, alarm.key().resource().id()).stream()
                .map(TreeNode::deviceId)
                .forEach(asked::add);
        asked.add(alarm.key().resource().id());
        explained.stream()
                .map(one -> one.key().resource())
                .filter(resource -> resource.kind() == Resource.Kind.DEVICE)
                .forEach(resource -> asked.add(resource.id()));
        return asked;
    }

    private List<BeforeLine> work(OpenAlarm alarm, long site, Instant from, Instant to) {
        Resource resource = alarm.key().resource();
        OptionalLong device =
                resource.kind() == Resource.Kind.DEVICE ? OptionalLong.of(resource.id()) : OptionalLong.empty();
        ZoneId zone = alarm.zone();
        return planned.stretches(site, device, from, to).stream()
                .map(stretch -> new BeforeLine(
                        Words.clock(stretch.from(), zone),
                        "",
                        "",
                        "Planned work" + title(site, device, stretch) + ", until "
                                + Words.clock(stretch.to(), zone)
                                + (stretch.to().equals(to) ? " or later" : ""),
                        ""))
                .toList();
    }

    private String title(long site, OptionalLong device, Stretch stretch) {
        return planned.current(site, device, stretch.from())
                .map(running -> ": " + running.title())
                .orElse("");
    }

    private static BeforeLine line(DeviceEvent event, String device, ZoneId zone) {
        String change = event.old().isEmpty() && event.fresh().isEmpty()
                ? ""
                : (event.old().isEmpty() ? "nothing" : event.old()) + " → "
                        + (event.fresh().isEmpty() ? "nothing" : event.fresh());
        return new BeforeLine(
                Words.clock(event.at(), zone), device, "/devices/" + event.deviceId(), event.title(), change);
    }
}
