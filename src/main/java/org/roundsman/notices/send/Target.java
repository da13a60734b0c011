package org.roundsman.notices.send;

import java.io.IOException;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.UnknownHostException;
import java.util.Locale;

/**
 * Where a webhook leads. The name is looked up once, the address is judged, and the connection goes to that very address, so
 * that a name which changes its address in between leads nowhere else.
 */
public final class Target {

    private static final int HTTPS = 443;
    private static final int HTTP = 80;
    private static final int NAT64_OCTET = 12;
    private static final byte[] NAT64 = {0, 0x64, (byte) 0xff, (byte) 0x9b, 0, 0, 0, 0, 0, 0, 0, 0};

    private final URI address;

    private Target(URI address) {
        this.address = address;
    }

    /**
     * @throws IllegalArgumentException in plain words, for an address that is none or no http or https
     */
    public static Target of(String text) {
        URI address;
        try {
            address = new URI(text).parseServerAuthority();
        } catch (URISyntaxException e) {
            throw new IllegalArgumentException("This is no address such as https://chat.example/hooks/7.");
        }
        String scheme = address.getScheme() == null ? "" : address.getScheme().toLowerCase(Locale.ROOT);
        require(scheme.equals("http") || scheme.equals("https"), "The address must begin with https:// or http://.");
        require(address.getHost() != null, "The address names no host.");
        require(address.getUserInfo() == null, "The address must hold no user and password.");
        require(address.getFragment() == null, "The address must hold no #.");
        require(address.getPort() <= 65_535 && address.getPort() != 0, "The port must be from 1 to 65535.");
        return new Target(address);
    }

    private static void require(boolean holds, String fault) {
        if (!holds) {
            throw new IllegalArgumentException(fault);
        }
    }

    boolean secure() {
        return address.getScheme().equalsIgnoreCase("https");
    }

    /** The host and nothing else: paths of webhooks are often secrets. */
    public String name() {
        return host();
    }

    String host() {
        String host = address.getHost();
        return host.startsWith("[") ? host.substring(1, host.length() - 1) : host;
    }

    int port() {
        return address.getPort() > 0 ? address.getPort() : secure() ? HTTPS : HTTP;
    }

    /** As the header Host has it. */
    String authority() {
        return address.getHost() + (address.getPort() > 0 ? ":" + address.getPort() : "");
    }

    String path() {
        URI ascii = URI.create(address.toASCIIString());
        String path = ascii.getRawPath() == null || ascii.getRawPath().isEmpty() ? "/" : ascii.getRawPath();
        return ascii.getRawQuery() == null ? path : path + "?" + ascii.getRawQuery();
    }

    /**
     * The address to connect to.
     *
     * @param localAllowed whether it may be this machine or link-local
     * @throws SendFailure when the name is unknown for now, or leads where it must not
     */
    InetAddress resolve(boolean localAllowed) throws SendFailure {
        try {
            InetAddress[] all = InetAddress.getAllByName(host());
            for (InetAddress one : all) {
                if (one.isAnyLocalAddress() || one.isMulticastAddress() || !localAllowed && local(one)) {
                    throw SendFailure.permanent(
                            host() + " leads to " + one.getHostAddress()
                                    + ", which is this machine, link-local or no single receiver's: not allowed",
                            null);
                }
            }
            return all[0];
        } catch (UnknownHostException e) {
            throw SendFailure.passing("the name " + host() + " is not known", e);
        } catch (IOException e) {
            throw SendFailure.passing("our own addresses cannot be read: " + e.getMessage(), e);
        }
    }

    private static boolean local(InetAddress one) throws IOException {
        InetAddress meant = throughNat64(one);
        return meant.isLoopbackAddress()
                || meant.isLinkLocalAddress()
                || meant.isAnyLocalAddress()
                || NetworkInterface.getByInetAddress(meant) != null;
    }

    /** RFC 6052: 64:ff9b::/96 holds an IPv4 address in its last four octets. */
    private static InetAddress throughNat64(InetAddress one) throws UnknownHostException {
        byte[] octets = one.getAddress();
        boolean translated =
                octets.length == 16 && java.util.Arrays.equals(octets, 0, NAT64_OCTET, NAT64, 0, NAT64_OCTET);
        return translated
                ? InetAddress.getByAddress(java.util.Arrays.copyOfRange(octets, NAT64_OCTET, octets.length))
                : one;
    }
}
