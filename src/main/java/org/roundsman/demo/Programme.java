package org.roundsman.demo;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.demo.invent.HourOfFaults;
import org.roundsman.demo.model.Stretch;
import org.roundsman.demo.model.Switched;

/**
 * Faults that begin and end by themselves at known minutes of each hour, so that somebody who looks at the demonstration
 * sees each kind once. Hours count from the programme's begin. A pure function of its items and the time; immutable.
 */
public final class Programme {

    private static final long MINUTE = 60_000;
    private static final long HOUR = 60 * MINUTE;

    private final long begin;
    private final List<Item> items;
    private final Map<Integer, List<Item>> byDevice = new HashMap<>();

    /**
     * One fault of the programme.
     *
     * @param where the device, site or whole fleet that it meets, for people
     * @param devices those that get the fault
     * @param minute of the hour, at which it begins
     * @param minutes how long it lasts; over before the hour is
     * @param every it comes in the first hour and then each time so many hours have passed
     */
    public record Item(Fault fault, String where, List<DemoDevice> devices, int minute, int minutes, int every) {

        public Item {
            devices = List.copyOf(devices);
            if (minute < 0 || minutes < 1 || minute + minutes > 60 || every < 1) {
                throw new IllegalArgumentException(fault + " at minute " + minute + " for " + minutes);
            }
        }
    }

    /** When an item is next, or is now. */
    public record Turn(Item item, Instant begins, Instant ends) {

        public boolean running(Instant at) {
            return !begins.isAfter(at);
        }
    }

    public Programme(Instant begin, List<Item> items) {
        this.begin = begin.toEpochMilli();
        this.items = List.copyOf(items);
        items.forEach(item -> item.devices()
                .forEach(device -> byDevice.computeIfAbsent(device.number(), made -> new ArrayList<>())
                        .add(item)));
    }

    /** One in which nothing happens. */
    public static Programme none() {
        return new Programme(Instant.EPOCH, List.of());
    }

    /** The one of the demonstration, from the next whole minute on: agents look at it once a minute. */
    public static Programme ofTheHour(DemoFleet fleet, Instant from) {
        long minute = Math.floorDiv(from.toEpochMilli() + MINUTE - 1, MINUTE);
        return new Programme(Instant.ofEpochMilli(minute * MINUTE), HourOfFaults.of(fleet));
    }

    public boolean isEmpty() {
        return items.isEmpty();
    }

    /** The faults that it has given or gives the device up to then: of each item the last two times. */
    List<Switched> upTo(DemoDevice device, long at) {
        List<Item> own = byDevice.getOrDefault(device.number(), List.of());
        if (own.isEmpty() || at < begin) {
            return List.of();
        }
        List<Switched> switched = new ArrayList<>();
        for (Item item : own) {
            long last = lastBegin(item, at);
            for (long from : new long[] {last - item.every() * HOUR, last}) {
                if (from >= begin) {
                    switched.add(new Switched(item.fault(), new Stretch(from, from + item.minutes() * MINUTE)));
                }
            }
        }
        return switched;
    }

    /** The first begin or end after that time at the device, or the end of time. */
    long nextEdge(DemoDevice device, long after) {
        long next = Long.MAX_VALUE;
        for (Item item : byDevice.getOrDefault(device.number(), List.of())) {
            long last = lastBegin(item, after);
            long end = last + item.minutes() * MINUTE;
            next = Math.min(next, last >= begin && end > after ? end : last + item.every() * HOUR);
        }
        return next;
    }

    /** Begin of the last turn at or before that time; before the programme's own begin where there was none. */
    private long lastBegin(Item item, long at) {
        long first = begin + item.minute() * MINUTE;
        long length = item.every() * HOUR;
        return first + Math.floorDiv(at - first, length) * length;
    }

    /** Each item's turn that runs or comes next, the earliest first. */
    public List<Turn> turns(Instant at) {
        return items.stream()
                .map(item -> turn(item, at.toEpochMilli()))
                .sorted(Comparator.comparing(Turn::begins))
                .toList();
    }

    private Turn turn(Item item, long at) {
        long from = lastBegin(item, Math.max(at, begin));
        if (from < begin || from + item.minutes() * MINUTE <= at) {
            from += item.every() * HOUR;
        }
        return new Turn(item, Instant.ofEpochMilli(from), Instant.ofEpochMilli(from + item.minutes() * MINUTE));
    }
}
