package org.roundsman.topology;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A chassis or port identifier of LLDP, read by its subtype (IEEE 802.1AB-2005, LLDP-MIB). Devices send addresses as octets
 * or, against the letter of the standard, as text: both are understood.
 *
 * @param what which of its many forms it has
 * @param text as a person reads it
 */
public record LldpId(What what, String text) {

    /** What an identifier is, whatever its number: macAddress is 4 for a chassis and 3 for a port. */
    public enum What {
        COMPONENT("component"),
        INTERFACE_ALIAS("interface alias"),
        PORT_COMPONENT("port component"),
        MAC("MAC"),
        NETWORK_ADDRESS("address"),
        INTERFACE_NAME("interface name"),
        CIRCUIT("circuit"),
        LOCAL("name of its own"),
        UNKNOWN("unknown kind");

        private final String word;

        What(String word) {
            this.word = word;
        }
    }

    private static final What[] CHASSIS = {
        What.UNKNOWN,
        What.COMPONENT,
        What.INTERFACE_ALIAS,
        What.PORT_COMPONENT,
        What.MAC,
        What.NETWORK_ADDRESS,
        What.INTERFACE_NAME,
        What.LOCAL
    };
    private static final What[] PORT = {
        What.UNKNOWN,
        What.INTERFACE_ALIAS,
        What.PORT_COMPONENT,
        What.MAC,
        What.NETWORK_ADDRESS,
        What.INTERFACE_NAME,
        What.CIRCUIT,
        What.LOCAL
    };
    private static final Pattern MAC_TEXT =
            Pattern.compile("[0-9a-f]{2}([:-][0-9a-f]{2}){5}|[0-9a-f]{4}([.][0-9a-f]{4}){2}|[0-9a-f]{12}");
    private static final int MAC_OCTETS = 6;
    private static final int IPV4 = 1;
    private static final int IPV6 = 2;

    /** A chassis identifier with its LldpChassisIdSubtype. */
    public static LldpId chassis(int kind, byte[] octets) {
        return of(kind > 0 && kind < CHASSIS.length ? CHASSIS[kind] : What.UNKNOWN, octets);
    }

    /** A port identifier with its LldpPortIdSubtype. */
    public static LldpId port(int kind, byte[] octets) {
        return of(kind > 0 && kind < PORT.length ? PORT[kind] : What.UNKNOWN, octets);
    }

    private static LldpId of(What what, byte[] octets) {
        String text =
                switch (what) {
                    case MAC ->
                        octets.length == MAC_OCTETS
                                ? mac(octets)
                                : macOfText(printed(octets)).orElse(printed(octets));
                    case NETWORK_ADDRESS -> address(octets).orElse(printed(octets));
                    case COMPONENT, INTERFACE_ALIAS, PORT_COMPONENT, INTERFACE_NAME, CIRCUIT, LOCAL, UNKNOWN ->
                        printed(octets);
                };
        return new LldpId(what, text);
    }

    /** The MAC address that it is; a device's own name for itself counts where it is written like one. */
    public Optional<String> mac() {
        return switch (what) {
            case MAC, LOCAL -> macOfText(text);
            default -> Optional.empty();
        };
    }

    /** The network address that it is. */
    public Optional<String> address() {
        return what == What.NETWORK_ADDRESS ? Optional.of(text) : Optional.empty();
    }

    /** In words: {@code MAC 00:00:5e:00:53:01}. */
    public String words() {
        return what.word + " " + text;
    }

    /** A MAC address written in any of the usual ways, in the form 00:00:5e:00:53:01. */
    public static Optional<String> macOfText(String text) {
        String low = text.strip().toLowerCase(Locale.ROOT);
        if (!MAC_TEXT.matcher(low).matches()) {
            return Optional.empty();
        }
        return Optional.of(mac(HexFormat.of().parseHex(low.replaceAll("[:.-]", ""))));
    }

    /** Six octets in the form 00:00:5e:00:53:01. */
    public static String mac(byte[] octets) {
        return HexFormat.ofDelimiter(":").formatHex(octets);
    }

    /** An octet of the address family (IANA: 1 = IPv4, 2 = IPv6) and the address, as 802.1AB writes them. */
    public static Optional<String> address(byte[] octets) {
        if (octets.length < 2) {
            return Optional.empty();
        }
        return address(octets[0], Arrays.copyOfRange(octets, 1, octets.length));
    }

    /** An address of that family; empty where it is neither IPv4 nor IPv6. */
    public static Optional<String> address(int family, byte[] octets) {
        boolean right = family == IPV4 && octets.length == 4 || family == IPV6 && octets.length == 16;
        if (!right) {
            return Optional.empty();
        }
        try {
            return Optional.of(InetAddress.getByAddress(octets).getHostAddress());
        } catch (UnknownHostException e) {
            throw new IllegalStateException("4 and 16 octets are right", e);
        }
    }

    /** Text where it is text (UTF-8, without control characters but a closing null), else hexadecimal digits. */
    private static String printed(byte[] octets) {
        int length = octets.length;
        while (length > 0 && octets[length - 1] == 0) {
            length--;
        }
        String text = new String(octets, 0, length, java.nio.charset.StandardCharsets.UTF_8);
        boolean plain = length > 0 && text.indexOf('\ufffd') < 0 && text.chars().noneMatch(Character::isISOControl);
        return plain ? text.strip() : HexFormat.ofDelimiter(":").formatHex(octets);
    }
}
