package org.roundsman.demo;

/** How an agent lets itself be asked. All secrets here are invented and open. */
public sealed interface DemoCredential {

    /** What the credential is called among those of its customer. */
    String name();

    /**
     * SNMP v1 or v2c; the agent answers to both.
     *
     * @param version what the service is told to speak: 1 or 2
     */
    record Community(String name, int version, String community) implements DemoCredential {}

    /** SNMP v3 with SHA-256 (RFC 7860) and AES-128 (RFC 3826), both always asked for. */
    record User(String name, String userName, String authPassword, String privPassword) implements DemoCredential {}
}
