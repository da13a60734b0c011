package org.roundsman.discovery;

import java.math.BigInteger;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * An IP address as a number.
 *
 * @param six whether it is IPv6
 */
record Ip(boolean six, BigInteger value) implements Comparable<Ip> {

    private static final String OCTET = "(25[0-5]|2[0-4]\\d|1\\d\\d|[1-9]?\\d)";
    private static final Pattern FOUR = Pattern.compile(OCTET + "\\." + OCTET + "\\." + OCTET + "\\." + OCTET);
    private static final Pattern SIX = Pattern.compile("[0-9A-Fa-f.:]*:[0-9A-Fa-f.:]*");

    /** The address that is written there; empty when it is none. No name service is asked. */
    static Optional<Ip> read(String text) {
        Matcher four = FOUR.matcher(text);
        if (four.matches()) {
            long value = 0;
            for (int i = 1; i <= 4; i++) {
                value = value << 8 | Integer.parseInt(four.group(i));
            }
            return Optional.of(new Ip(false, BigInteger.valueOf(value)));
        }
        return SIX.matcher(text).matches() ? readSix(text) : Optional.empty();
    }

    private static Optional<Ip> readSix(String text) {
        try {
            // Text with a colon is never taken for a name. IPv4 in IPv6 clothes comes back as IPv4, and is none of
            // ours.
            InetAddress address = InetAddress.getByName(text);
            return address instanceof Inet6Address
                    ? Optional.of(new Ip(true, new BigInteger(1, address.getAddress())))
                    : Optional.empty();
        } catch (UnknownHostException e) {
            return Optional.empty();
        }
    }

    /** The one way to write this host: RFC 5952 for IPv6; what is no address stays as it is. */
    static String canonical(String host) {
        return read(host).map(Ip::text).orElse(host);
    }

    int bits() {
        return six ? 128 : 32;
    }

    Ip plus(long count) {
        return new Ip(six, value.add(BigInteger.valueOf(count)));
    }

    String text() {
        return six ? sixText() : fourText();
    }

    private String fourText() {
        long number = value.longValue();
        return (number >> 24) + "." + (number >> 16 & 255) + "." + (number >> 8 & 255) + "." + (number & 255);
    }

    /** RFC 5952 section 4: lower case, no leading zeros, the first of the longest runs of two zeros or more cut out. */
    private String sixText() {
        int[] groups = new int[8];
        for (int i = 0; i < 8; i++) {
            groups[i] = value.shiftRight(16 * (7 - i)).intValue() & 0xffff;
        }
        int from = 0;
        int longest = 1;
        for (int i = 0; i < 8; i++) {
            int run = 0;
            while (i + run < 8 && groups[i + run] == 0) {
                run++;
            }
            if (run > longest) {
                longest = run;
                from = i;
            }
        }
        return longest < 2 ? join(groups, 0, 8) : join(groups, 0, from) + "::" + join(groups, from + longest, 8);
    }

    private static String join(int[] groups, int from, int to) {
        StringBuilder text = new StringBuilder();
        for (int i = from; i < to; i++) {
            text.append(i == from ? "" : ":").append(Integer.toHexString(groups[i]));
        }
        return text.toString();
    }

    @Override
    public int compareTo(Ip other) {
        return six == other.six ? value.compareTo(other.value) : Boolean.compare(six, other.six);
    }
}
