package org.roundsman.fleet;

import java.util.EnumSet;
import java.util.Set;

/** What is weak about credentials, from the worst to the least. */
public enum CredentialWeakness {
    /** The word is among those that anybody tries first. Common practice, no source. */
    KNOWN_WORD(
            "well-known word",
            "The secret is a word that anybody tries first. Choose another one, on the devices and here."),
    /** RFC 3414 section 1.2 counts disclosure and masquerade; v1 and v2c guard against none of them. */
    READABLE(
            "readable on the wire",
            "SNMP v1 and v2c send the community and every value in clear: whoever can listen on the way can read and"
                    + " reuse them. Use v3 with authentication and privacy where the device offers it."),
    /** RFC 3411, level noAuthNoPriv. */
    NO_AUTHENTICATION(
            "no authentication",
            "SNMP v3 without authentication: the user name is all that is asked for, and it is sent in clear."),
    /** Shorter than {@link CredentialDraft#SHORT} characters. Common practice, no source. */
    SHORT_SECRET(
            "short secret",
            "A secret has fewer than 12 characters. Whoever has recorded one message can try short ones by machine."),
    /** RFC 3411, level authNoPriv. */
    NO_PRIVACY("no privacy", "SNMP v3 without privacy: every value that is read can be read on the way."),
    /** HMAC-SHA-96 of RFC 3414; RFC 7860 has its successors. NIST retires SHA-1 by the end of 2030 (from memory). */
    SHA1(
            "SHA-1",
            "Authentication with SHA-1, which is being retired by the end of 2030. Use SHA-256 or more (RFC 7860) where"
                    + " the device offers it.");

    private final String word;
    private final String text;

    CredentialWeakness(String word, String text) {
        this.word = word;
        this.text = text;
    }

    /** A few words for a list. */
    public String word() {
        return word;
    }

    /** What it means and what to do, in whole sentences. */
    public String text() {
        return text;
    }

    /** All that is weak about these; never opens a secret. */
    static Set<CredentialWeakness> of(Credential credential) {
        Set<CredentialWeakness> found = EnumSet.noneOf(CredentialWeakness.class);
        add(found, KNOWN_WORD, credential.knownWord);
        add(found, SHORT_SECRET, credential.shortSecret);
        add(found, READABLE, credential.version < 3);
        boolean user = credential.version == 3;
        add(found, NO_AUTHENTICATION, user && credential.level.equals("NO_AUTH"));
        add(found, NO_PRIVACY, user && credential.level.equals("AUTH"));
        add(found, SHA1, user && credential.authProtocol.equals("SHA1"));
        return found;
    }

    private static void add(Set<CredentialWeakness> found, CredentialWeakness weakness, boolean holds) {
        if (holds) {
            found.add(weakness);
        }
    }
}
