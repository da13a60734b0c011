package org.roundsman.web.api;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.CredentialDraft;
import org.roundsman.fleet.CredentialWeakness;

/** How SNMP agents let us in; never a secret. */
@Schema(name = "Credentials")
record CredentialJson(
        @Schema(examples = "5") long id,
        @Schema(examples = "Clinics, read only") String name,

        @Schema(nullable = true, description = "Whose devices may use it; null for every customer's", examples = "7")
        Long customerId,

        @Schema(nullable = true, description = "The one site whose devices may use it; null for every site")
        Long siteId,

        @Schema(description = "Order among those of the same owner: 1 is tried first", examples = "1")
        int turn,

        @Schema(examples = "v3", description = "v1, v2c or v3")
        String version,

        @Schema(examples = "rounds") String userName,

        @Schema(examples = "auth-priv", description = "no-auth, auth or auth-priv; empty for v1 and v2c")
        String level,

        @Schema(examples = "SHA256") String authProtocol,
        @Schema(examples = "AES128") String privProtocol,

        @Schema(description = "What is weak about it, in words")
        List<String> weaknesses,

        @Schema(description = "How many devices use it", examples = "12")
        long devices) {

    private static final List<String> VERSIONS = List.of("v1", "v2c", "v3");
    private static final List<String> LEVELS = List.of("NO_AUTH", "AUTH", "AUTH_PRIV");

    static CredentialJson of(Credential credential, long devices) {
        Entry entry = Entry.of(credential);
        return new CredentialJson(
                credential.id,
                credential.name,
                entry.customerId,
                entry.siteId,
                credential.turn,
                entry.version,
                credential.userName,
                entry.level,
                credential.authProtocol,
                credential.privProtocol,
                credential.weaknesses().stream().map(CredentialWeakness::word).toList(),
                devices);
    }

    /** Credentials as entered. Secrets come in and never go out; on a change, those left out stay. */
    @Schema(name = "CredentialsEntry")
    record Entry(
            @Schema(nullable = true, description = "null for every customer's, or where siteId says it", examples = "7")
            Long customerId,

            @Schema(nullable = true) Long siteId,

            @Schema(required = true, maxLength = 120, examples = "Clinics, read only")
            String name,

            @Schema(required = true, description = "v1, v2c or v3", examples = "v3")
            String version,

            @Schema(writeOnly = true, description = "v1 and v2c")
            String community,

            @Schema(description = "v3", examples = "rounds") String userName,

            @Schema(description = "v3: no-auth, auth or auth-priv", examples = "auth-priv")
            String level,

            @Schema(description = "SHA1, SHA224, SHA256, SHA384 or SHA512", examples = "SHA256")
            String authProtocol,

            @Schema(writeOnly = true, minLength = 8) String authPassword,

            @Schema(description = "AES128, AES192 or AES256", examples = "AES128")
            String privProtocol,

            @Schema(writeOnly = true, minLength = 8) String privPassword)
            implements ApiBody {

        static Entry of(Credential credential) {
            return new Entry(
                    credential.site != null || credential.customer == null ? null : credential.customer.id,
                    credential.site == null ? null : credential.site.id,
                    credential.name,
                    VERSIONS.get(credential.version - 1),
                    null,
                    credential.userName,
                    credential.version == 3
                            ? credential
                                    .level
                                    .toLowerCase(java.util.Locale.ROOT)
                                    .replace('_', '-')
                            : "",
                    credential.authProtocol,
                    null,
                    credential.privProtocol,
                    null);
        }

        CredentialDraft draft() {
            String known = Given.text(level).toUpperCase(java.util.Locale.ROOT).replace('-', '_');
            return new CredentialDraft(
                    customerId,
                    siteId,
                    Given.text(name),
                    VERSIONS.indexOf(Given.text(version)) + 1,
                    Given.text(community),
                    Given.text(userName),
                    LEVELS.contains(known) ? known : "",
                    Given.text(authProtocol),
                    Given.text(authPassword),
                    Given.text(privProtocol),
                    Given.text(privPassword));
        }

        /** Without the secrets. */
        @Override
        public String toString() {
            return "credentials “" + name + "”";
        }
    }
}
