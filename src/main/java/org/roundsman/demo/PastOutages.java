package org.roundsman.demo;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.roundsman.demo.model.Stretch;

/** What went wrong in the past of the invented fleet, as those who looked after it would have found out. Pure. */
public final class PastOutages {

    /** Shorter silences are no outages: three rounds a minute apart. */
    private static final long SHORTEST_MILLIS = 180_000;

    private final DemoFleet fleet;
    private final Faults faults;

    public PastOutages(DemoFleet fleet) {
        this.fleet = fleet;
        // the clock only times what is switched by hand, and nothing is switched in the past
        this.faults = new Faults(fleet, Clock.fixed(Instant.EPOCH, ZoneOffset.UTC));
    }

    /**
     * Devices of one site that were silent for the same reason.
     *
     * @param line the site's line was down: all of its devices; else it is one device
     * @param powerless the switch port fed nothing; false for a line
     * @param flaps it was silent again and again, for the whole time
     */
    public record Outage(
            DemoSite site,
            List<DemoDevice> devices,
            boolean line,
            boolean powerless,
            boolean flaps,
            Instant from,
            Instant to) {

        public Outage {
            devices = List.copyOf(devices);
        }
    }

    /** By their begin. Those that had begun before, or were not over, are left out. */
    public List<Outage> between(Instant from, Instant to) {
        Map<String, List<Part>> parts = new LinkedHashMap<>();
        for (DemoDevice device : fleet.devices()) {
            if (device.standing().contains(Fault.CREDENTIAL_WRONG)) {
                continue;
            }
            if (device.standing().contains(Fault.FLAPPING)) {
                Part part = new Part(device, new Stretch(from.toEpochMilli(), to.toEpochMilli()), false, false, true);
                parts.put(part.key(), List.of(part));
                continue;
            }
            for (Stretch silence : faults.silences(device, from.toEpochMilli(), to.toEpochMilli())) {
                boolean whole = silence.from() > from.toEpochMilli() && silence.to() < to.toEpochMilli();
                if (whole && silence.to() - silence.from() >= SHORTEST_MILLIS) {
                    Part part = part(device, silence);
                    parts.computeIfAbsent(part.key(), made -> new ArrayList<>()).add(part);
                }
            }
        }
        return parts.values().stream()
                .map(this::outage)
                .sorted(Comparator.comparing(Outage::from)
                        .thenComparing(outage -> outage.site().number()))
                .toList();
    }

    private record Part(DemoDevice device, Stretch silence, boolean line, boolean powerless, boolean flaps) {
        String key() {
            return line
                    ? "site " + device.site() + " " + silence.from()
                    : "device " + device.number() + " " + silence.from();
        }
    }

    private Part part(DemoDevice device, Stretch silence) {
        Set<Fault> now = faults.of(device, silence.from());
        boolean line = now.contains(Fault.UPLINK_LOST);
        return new Part(device, silence, line, !line && now.contains(Fault.PORT_DEAD), false);
    }

    private Outage outage(List<Part> parts) {
        Part first = parts.get(0);
        long to = parts.stream().mapToLong(part -> part.silence().to()).max().orElseThrow();
        return new Outage(
                fleet.siteOf(first.device()),
                parts.stream().map(Part::device).toList(),
                first.line(),
                first.powerless(),
                first.flaps(),
                Instant.ofEpochMilli(first.silence().from()),
                Instant.ofEpochMilli(to));
    }
}
