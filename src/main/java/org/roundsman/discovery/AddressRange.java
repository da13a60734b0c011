package org.roundsman.discovery;

import java.math.BigInteger;
import java.util.List;
import java.util.Optional;

/** Addresses from one to another, both included. */
record AddressRange(Ip first, Ip last) {

    /** A part of the address space that no device can be asked at, and why. */
    private record Barred(String network, int prefix, String reason) {}

    /** RFC 6890 and RFC 4291 say what these are. */
    private static final List<Barred> BARRED = List.of(
            new Barred("0.0.0.0", 8, "0.0.0.0/8 stands for “this network” and is nobody's address"),
            new Barred("224.0.0.0", 4, "224.0.0.0/4 is for multicast, not for single devices"),
            new Barred("240.0.0.0", 4, "240.0.0.0/4 is reserved, and 255.255.255.255 is broadcast"),
            new Barred("::", 128, ":: is the unspecified address"),
            new Barred("fe80::", 10, "link-local addresses (fe80::/10) cannot be reached through a router"),
            new Barred("ff00::", 8, "ff00::/8 is for multicast, not for single devices"));

    /**
     * Reads a prefix (RFC 4632), first and last address, or one address.
     *
     * @throws IllegalArgumentException saying what is wrong and what would be right
     */
    static AddressRange read(String text) {
        AddressRange range = text.indexOf('/') >= 0 ? prefix(text) : text.indexOf('-') >= 0 ? pair(text) : one(text);
        range.refuseBarred(text);
        return range;
    }

    private static AddressRange one(String text) {
        Ip address = address(text, text);
        return new AddressRange(address, address);
    }

    private static Ip address(String part, String whole) {
        return Ip.read(part.strip())
                .orElseThrow(() -> new IllegalArgumentException("“" + whole
                        + "” is no range of addresses; write 192.0.2.0/24, 192.0.2.10-192.0.2.40 or 192.0.2.17"));
    }

    private static AddressRange pair(String text) {
        String[] ends = text.split("-", 2);
        Ip first = address(ends[0], text);
        String end = ends[1].strip();
        boolean lastOctetOnly = !first.six() && end.matches("\\d{1,3}");
        String from = first.text();
        Ip last = address(lastOctetOnly ? from.substring(0, from.lastIndexOf('.') + 1) + end : end, text);
        if (first.six() != last.six() || last.compareTo(first) < 0) {
            throw new IllegalArgumentException("“" + text + "” ends before it begins");
        }
        return new AddressRange(first, last);
    }

    private static AddressRange prefix(String text) {
        String[] parts = text.split("/", 2);
        Ip network = address(parts[0], text);
        int length = length(parts[1].strip(), network)
                .orElseThrow(() -> new IllegalArgumentException("“" + text
                        + "”: after the slash comes a number from 0 to " + network.bits() + ", such as 192.0.2.0/24"));
        int hostBits = network.bits() - length;
        BigInteger mask = BigInteger.ONE.shiftLeft(hostBits).subtract(BigInteger.ONE);
        Ip begin = new Ip(network.six(), network.value().andNot(mask));
        if (!begin.equals(network)) {
            throw new IllegalArgumentException("“" + text + "” begins inside its network; write " + begin.text() + "/"
                    + length + " for all of it, or " + network.text() + " for the one address");
        }
        Ip end = new Ip(network.six(), begin.value().or(mask));
        // The network's own address and broadcast are no devices. A /31 has neither (RFC 3021), nor has IPv6 broadcast.
        boolean ends = !network.six() && hostBits > 1;
        return ends ? new AddressRange(begin.plus(1), end.plus(-1)) : new AddressRange(begin, end);
    }

    private static Optional<Integer> length(String text, Ip network) {
        return text.matches("\\d{1,3}") && Integer.parseInt(text) <= network.bits()
                ? Optional.of(Integer.valueOf(text))
                : Optional.empty();
    }

    private void refuseBarred(String text) {
        for (Barred barred : BARRED) {
            Ip network = Ip.read(barred.network).orElseThrow();
            if (network.six() == first.six() && touches(network, barred.prefix)) {
                throw new IllegalArgumentException("“" + text + "” cannot be swept: " + barred.reason);
            }
        }
    }

    private boolean touches(Ip network, int prefix) {
        BigInteger size = BigInteger.ONE.shiftLeft(network.bits() - prefix);
        return first.value().compareTo(network.value().add(size)) < 0
                && last.value().compareTo(network.value()) >= 0;
    }

    BigInteger size() {
        return last.value().subtract(first.value()).add(BigInteger.ONE);
    }

    boolean has(Ip address) {
        return address.six() == first.six() && address.compareTo(first) >= 0 && address.compareTo(last) <= 0;
    }
}
