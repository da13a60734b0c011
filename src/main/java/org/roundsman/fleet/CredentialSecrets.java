package org.roundsman.fleet;

/**
 * An opened credential, for the poller alone. {@code toString} never shows a secret.
 *
 * @param version 1, 2 (v2c) or 3
 * @param community empty for v3
 */
public record CredentialSecrets(
        int version,
        String community,
        String userName,
        String level,
        String authProtocol,
        String authPassword,
        String privProtocol,
        String privPassword) {

    @Override
    public String toString() {
        return "credential secrets of version " + version;
    }
}
