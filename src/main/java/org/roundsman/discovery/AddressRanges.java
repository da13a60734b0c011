package org.roundsman.discovery;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * The addresses that may be swept at a site, as entered: prefixes such as 192.0.2.0/24, first and last address, single
 * addresses; IPv4 and IPv6. The network's own address and broadcast of an IPv4 prefix are left out; what is entered
 * twice counts once. Immutable.
 */
public final class AddressRanges {

    /** The most addresses of one sweep, each counted once for each port. */
    public static final int MOST = 4_096;

    private static final int MOST_ENTRIES = 256;

    /** Ascending, without overlaps. */
    private final List<AddressRange> ranges;

    private AddressRanges(List<AddressRange> ranges) {
        this.ranges = ranges;
    }

    /**
     * Reads entries that are separated by line breaks or commas.
     *
     * @throws IllegalArgumentException saying what is wrong with each entry, and what would be right
     */
    public static AddressRanges read(String text) {
        List<AddressRange> read = new ArrayList<>();
        List<String> faults = new ArrayList<>();
        List<String> entries = entries(text);
        if (entries.size() > MOST_ENTRIES) {
            throw new IllegalArgumentException("at most " + MOST_ENTRIES + " ranges; these are " + entries.size());
        }
        for (String entry : entries) {
            try {
                read.add(AddressRange.read(entry));
            } catch (IllegalArgumentException e) {
                faults.add(e.getMessage());
            }
        }
        if (!faults.isEmpty()) {
            throw new IllegalArgumentException(String.join(". ", faults));
        }
        return new AddressRanges(merged(read));
    }

    /** The entries of a text, one each. */
    static List<String> entries(String text) {
        return text.lines()
                .flatMap(line -> List.of(line.split(",")).stream())
                .map(String::strip)
                .filter(entry -> !entry.isEmpty())
                .toList();
    }

    private static List<AddressRange> merged(List<AddressRange> read) {
        List<AddressRange> sorted = new ArrayList<>(read);
        sorted.sort(Comparator.comparing(AddressRange::first));
        List<AddressRange> merged = new ArrayList<>();
        for (AddressRange next : sorted) {
            AddressRange before = merged.isEmpty() ? null : merged.get(merged.size() - 1);
            if (before == null || !before.has(next.first())) {
                merged.add(next);
            } else if (next.last().compareTo(before.last()) > 0) {
                merged.set(merged.size() - 1, new AddressRange(before.first(), next.last()));
            }
        }
        return List.copyOf(merged);
    }

    /** How many addresses these are. */
    public BigInteger count() {
        return ranges.stream().map(AddressRange::size).reduce(BigInteger.ZERO, BigInteger::add);
    }

    /** Whether the host is an address among these; a host name never is. */
    public boolean include(String host) {
        return Ip.read(host)
                .map(address -> ranges.stream().anyMatch(range -> range.has(address)))
                .orElse(false);
    }

    /**
     * How many requests for a first answer a sweep makes: each address once for each port.
     *
     * @throws IllegalArgumentException when there are none, or more than {@link #MOST}; the text has the count
     */
    public int questions(int ports) {
        BigInteger all = count().multiply(BigInteger.valueOf(ports));
        if (all.signum() == 0) {
            throw new IllegalArgumentException("enter at least one range, such as 192.0.2.0/24");
        }
        if (all.compareTo(BigInteger.valueOf(MOST)) > 0) {
            throw new IllegalArgumentException(String.format(
                    Locale.ENGLISH,
                    "these are %,d addresses%s; one sweep asks at most %,d: sweep them in parts",
                    count(),
                    ports == 1 ? "" : " on " + ports + " ports each",
                    MOST));
        }
        return all.intValue();
    }

    /**
     * Every address with every port, in ascending order: the number of each is its place in this list.
     *
     * @throws IllegalArgumentException as {@link #questions} does
     */
    public List<Target> targets(List<Integer> ports) {
        List<Target> targets = new ArrayList<>(questions(ports.size()));
        for (AddressRange range : ranges) {
            long size = range.size().longValueExact();
            for (long i = 0; i < size; i++) {
                String host = range.first().plus(i).text();
                ports.forEach(port -> targets.add(new Target(targets.size(), host, port)));
            }
        }
        return targets;
    }

    /**
     * One address to ask.
     *
     * @param place its number among all of the sweep, from 0
     */
    public record Target(int place, String host, int port) {}
}
