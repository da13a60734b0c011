package org.roundsman.demo;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.roundsman.demo.past.DevicePast;

/**
 * The past of the invented fleet: 13 weeks before the service's first start, as the agents would have shown it, faults
 * and restarts included. It has no round-trip times: those belong to whoever asks, not to the devices. One thread at a
 * time.
 */
public final class History {

    public static final Duration LENGTH = Duration.ofDays(13 * 7);
    private static final int DEVICES_PER_LOAD = 400;
    private static final long QUARTER_SECONDS = 900;

    private final DemoFleet fleet;
    private final List<DevicePast> devices;

    public History(DemoFleet fleet) {
        this.fleet = fleet;
        // the clock only times what is switched by hand, and nothing is switched in the past
        Faults scheduled = new Faults(fleet, Clock.fixed(Instant.EPOCH, ZoneOffset.UTC));
        this.devices = fleet.devices().stream()
                .map(device -> new DevicePast(fleet, device, scheduled))
                .toList();
    }

    /**
     * Fills in the quarter hours that are missing, latest day first, and stops early between two loads when the thread is interrupted.
     *
     * @param firstStart when the service first ran; always the same moment for one database
     * @return how many days were filled
     */
    public int fill(Instant firstStart, HistorySink sink, HistoryProgress progress) {
        Instant to = quarterUpTo(firstStart);
        Instant from = to.minus(LENGTH);
        List<LocalDate> days = daysWithout(progress.finished(), from, to);
        int filled = 0;
        for (LocalDate day : days) {
            if (!loadDay(day, from, to, sink)) {
                break;
            }
            progress.finish(day);
            filled++;
        }
        return filled;
    }

    /**
     * Loads the spans up to the first start itself, unless all days are filled already. Loaded before the first round,
     * they let it go on with the span that it meets; {@link #fill} comes after.
     */
    public void fillSpans(Instant firstStart, HistorySink sink, HistoryProgress progress) {
        Instant to = quarterUpTo(firstStart);
        Instant from = to.minus(LENGTH);
        if (!daysWithout(progress.finished(), from, to).isEmpty()) {
            // The schedule of faults counts milliseconds; a finer end would leave a sliver behind a silence.
            loadSpans(from, firstStart.truncatedTo(ChronoUnit.MILLIS), sink);
        }
    }

    private static Instant quarterUpTo(Instant moment) {
        return Instant.ofEpochSecond(Math.floorDiv(moment.getEpochSecond(), QUARTER_SECONDS) * QUARTER_SECONDS);
    }

    private static List<LocalDate> daysWithout(Set<LocalDate> finished, Instant from, Instant to) {
        LocalDate first = LocalDate.ofInstant(from, ZoneOffset.UTC);
        List<LocalDate> days = new ArrayList<>();
        for (LocalDate day = LocalDate.ofInstant(to.minusSeconds(1), ZoneOffset.UTC);
                !day.isBefore(first);
                day = day.minusDays(1)) {
            if (!finished.contains(day)) {
                days.add(day);
            }
        }
        return days;
    }

    private void loadSpans(Instant from, Instant to, HistorySink sink) {
        for (int first = 0; first < devices.size(); first += DEVICES_PER_LOAD) {
            List<HistorySink.PastSpan> spans = new ArrayList<>();
            part(first).forEach(device -> spans.addAll(device.spans(from, to)));
            sink.load(List.of(), spans);
        }
    }

    private boolean loadDay(LocalDate day, Instant from, Instant to, HistorySink sink) {
        Instant begin = latest(day.atStartOfDay(ZoneOffset.UTC).toInstant(), from);
        Instant dayEnd = day.plusDays(1).atStartOfDay(ZoneOffset.UTC).toInstant();
        Instant end = dayEnd.isBefore(to) ? dayEnd : to;
        for (int first = 0; first < devices.size(); first += DEVICES_PER_LOAD) {
            if (Thread.currentThread().isInterrupted()) {
                return false;
            }
            List<HistorySink.DeviceQuarter> quarters = new ArrayList<>();
            part(first).forEach(device -> quarters.addAll(device.quarters(begin, end)));
            sink.load(quarters, List.of());
        }
        return true;
    }

    private List<DevicePast> part(int first) {
        return devices.subList(first, Math.min(devices.size(), first + DEVICES_PER_LOAD));
    }

    private static Instant latest(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }

    public DemoFleet fleet() {
        return fleet;
    }
}
