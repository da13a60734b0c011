package org.roundsman.web.edit;

import java.util.List;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.CredentialDraft;

/** What the credentials' form sent. Secrets come in and are never shown again: {@code toString} leaves them out. */
record CredentialForm(
        @RestForm String customerId,
        @RestForm String name,
        @RestForm String version,
        @RestForm String community,
        @RestForm String userName,
        @RestForm String level,
        @RestForm String authProtocol,
        @RestForm String authPassword,
        @RestForm String privProtocol,
        @RestForm String privPassword) {

    private static final List<String> VERSIONS = List.of("1", "2", "3");
    private static final List<String> LEVELS = List.of("NO_AUTH", "AUTH", "AUTH_PRIV");

    static CredentialForm blank() {
        return new CredentialForm("", "", "2", "", "", "AUTH_PRIV", "SHA256", "", "AES128", "");
    }

    static CredentialForm of(Credential credential) {
        return new CredentialForm(
                credential.customer == null ? "" : credential.customer.id.toString(),
                credential.name,
                String.valueOf(credential.version),
                "",
                credential.userName,
                credential.level,
                credential.authProtocol,
                "",
                credential.privProtocol,
                "");
    }

    CredentialDraft draft(Entry entry) {
        return new CredentialDraft(
                entry.id("customerId", Entry.text(customerId)),
                Entry.text(name),
                VERSIONS.indexOf(Entry.text(version)) + 1,
                Entry.text(community),
                Entry.text(userName),
                LEVELS.contains(Entry.text(level)) ? level : "",
                Entry.text(authProtocol),
                Entry.text(authPassword),
                Entry.text(privProtocol),
                Entry.text(privPassword));
    }

    @Override
    public String toString() {
        return "CredentialForm " + name;
    }
}
