package org.roundsman.fleet;

import java.util.regex.Pattern;

/** Tells addresses and host names from typing errors, without asking the name service. */
final class HostNames {

    private static final Pattern DOTTED = Pattern.compile("[0-9.]+");
    private static final Pattern OCTET = Pattern.compile("25[0-5]|2[0-4]\\d|1\\d\\d|[1-9]?\\d");
    private static final Pattern LABEL = Pattern.compile("[A-Za-z0-9_]([A-Za-z0-9_-]{0,61}[A-Za-z0-9_])?");
    private static final Pattern GROUP = Pattern.compile("[0-9A-Fa-f]{1,4}");

    private HostNames() {}

    static boolean valid(String host) {
        if (host == null || host.isEmpty() || host.length() > 253) {
            return false;
        }
        if (host.indexOf(':') >= 0) {
            return isIpv6(host);
        }
        // What consists of digits and dots is meant as an address: 192.0.2.300 is no host name.
        return DOTTED.matcher(host).matches() ? isIpv4(host) : isName(host);
    }

    private static boolean isIpv4(String host) {
        String[] octets = host.split("\\.", -1);
        return octets.length == 4
                && java.util.Arrays.stream(octets)
                        .allMatch(o -> OCTET.matcher(o).matches());
    }

    private static boolean isName(String host) {
        String name = host.endsWith(".") ? host.substring(0, host.length() - 1) : host;
        return java.util.Arrays.stream(name.split("\\.", -1))
                .allMatch(l -> LABEL.matcher(l).matches());
    }

    /** RFC 4291 text form without zone: eight groups, or fewer around one {@code ::}. */
    private static boolean isIpv6(String host) {
        int gap = host.indexOf("::");
        if (gap != host.lastIndexOf("::")) {
            return false;
        }
        if (gap < 0) {
            return groups(host) == 8;
        }
        int before = groups(host.substring(0, gap));
        int after = groups(host.substring(gap + 2));
        return before >= 0 && after >= 0 && before + after <= 7;
    }

    /** How many groups the text holds, or -1 when one of them is wrong. */
    private static int groups(String text) {
        if (text.isEmpty()) {
            return 0;
        }
        String[] parts = text.split(":", -1);
        int count = 0;
        for (int i = 0; i < parts.length; i++) {
            if (i == parts.length - 1 && isIpv4(parts[i])) {
                count += 2;
            } else if (GROUP.matcher(parts[i]).matches()) {
                count++;
            } else {
                return -1;
            }
        }
        return count;
    }
}
