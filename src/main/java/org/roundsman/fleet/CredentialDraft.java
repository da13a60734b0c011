package org.roundsman.fleet;

import java.util.Set;

/**
 * Credentials as entered. On a change, an empty secret keeps the one that is there.
 *
 * @param customerId null for every customer's, or where siteId says it
 * @param siteId the one site whose devices may use them, null for every site
 * @param version 1, 2 (v2c) or 3
 * @param level NO_AUTH, AUTH or AUTH_PRIV; v3 only
 * @param authProtocol SHA1, SHA224, SHA256, SHA384, SHA512 or empty
 * @param privProtocol AES128, AES192, AES256 or empty
 */
public record CredentialDraft(
        Long customerId,
        Long siteId,
        String name,
        int version,
        String community,
        String userName,
        String level,
        String authProtocol,
        String authPassword,
        String privProtocol,
        String privPassword) {

    public static final Set<String> AUTH_PROTOCOLS = Set.of("SHA1", "SHA224", "SHA256", "SHA384", "SHA512");
    public static final Set<String> PRIV_PROTOCOLS = Set.of("AES128", "AES192", "AES256");

    /** Least length of a USM password (RFC 3414 section 11.2). */
    static final int PASSWORD_LEAST = 8;

    /** Secrets with fewer characters are warned about: common practice, no source. */
    static final int SHORT = 12;

    /** For every site of a customer, or of every customer. */
    public CredentialDraft(
            Long customerId,
            String name,
            int version,
            String community,
            String userName,
            String level,
            String authProtocol,
            String authPassword,
            String privProtocol,
            String privPassword) {
        this(
                customerId,
                null,
                name,
                version,
                community,
                userName,
                level,
                authProtocol,
                authPassword,
                privProtocol,
                privPassword);
    }

    /** v1 or v2c with a community. */
    public static CredentialDraft community(Long customerId, String name, int version, String community) {
        return new CredentialDraft(customerId, name, version, community, "", "NO_AUTH", "", "", "", "");
    }

    /** The same for the devices of one site only. */
    public CredentialDraft at(long onlySite) {
        return new CredentialDraft(
                customerId,
                onlySite,
                name,
                version,
                community,
                userName,
                level,
                authProtocol,
                authPassword,
                privProtocol,
                privPassword);
    }

    boolean authenticates() {
        return version == 3 && !level.equals("NO_AUTH");
    }

    boolean encrypts() {
        return version == 3 && level.equals("AUTH_PRIV");
    }

    void check(InputCheck check, Credential before) {
        check.text("name", name, 1, 120);
        check.that("version", version >= 1 && version <= 3, "SNMP v1, v2c or v3");
        if (version == 3) {
            check.text("userName", userName, 1, 32);
            check.that("level", Set.of("NO_AUTH", "AUTH", "AUTH_PRIV").contains(level), "choose a security level");
        } else {
            check.text("community", community, before == null || before.sealedCommunity == null ? 1 : 0, 255);
        }
        if (authenticates()) {
            check.that("authProtocol", AUTH_PROTOCOLS.contains(authProtocol), "choose SHA1 or one of SHA-2");
            checkPassword(check, "authPassword", authPassword, before != null && before.sealedAuth != null);
        }
        if (encrypts()) {
            check.that("privProtocol", PRIV_PROTOCOLS.contains(privProtocol), "choose AES128, AES192 or AES256");
            checkPassword(check, "privPassword", privPassword, before != null && before.sealedPriv != null);
        }
    }

    private static void checkPassword(InputCheck check, String field, String password, boolean kept) {
        boolean missing = password == null || password.isEmpty();
        check.that(field, missing ? kept : password.length() >= PASSWORD_LEAST, "at least 8 characters (RFC 3414)");
    }

    /** Without the secrets. */
    @Override
    public String toString() {
        return "credentials “" + name + "” of version " + version;
    }
}
