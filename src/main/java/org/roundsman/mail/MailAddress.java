package org.roundsman.mail;

import jakarta.mail.internet.AddressException;
import jakarta.mail.internet.InternetAddress;

/** Whether a text is one mail address (RFC 5322 addr-spec with a domain), and nothing besides. */
public final class MailAddress {

    /** RFC 5321, sections 4.5.3.1.1 to 4.5.3.1.3: 64 octets, the sign, 255 octets; the path as a whole has 256 with brackets. */
    private static final int LONGEST = 254;

    private MailAddress() {}

    public static boolean valid(String text) {
        if (text == null || text.length() > LONGEST || !text.matches("[\\x21-\\x7e]+@[A-Za-z0-9.-]+")) {
            return false;
        }
        try {
            InternetAddress address = new InternetAddress(text, true);
            return address.getAddress().equals(text) && address.getPersonal() == null;
        } catch (AddressException e) {
            return false;
        }
    }

    /** What comes after the last @. */
    static String domain(String address) {
        return address.substring(address.lastIndexOf('@') + 1);
    }
}
