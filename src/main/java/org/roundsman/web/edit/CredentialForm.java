package org.roundsman.web.edit;

import java.util.List;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.CredentialDraft;

/** What the credentials' form sent. Secrets come in and are never shown again: {@code toString} leaves them out. */
record CredentialForm(
        @RestForm String owner,
        @RestForm String name,
        @RestForm String version,
        @RestForm String community,
        @RestForm String userName,
        @RestForm String level,
        @RestForm String authProtocol,
        @RestForm String authPassword,
        @RestForm String privProtocol,
        @RestForm String privPassword) {

    /** How the list of owners names a customer and a site. */
    static final String CUSTOMER = "customer-";

    static final String SITE = "site-";

    private static final List<String> VERSIONS = List.of("1", "2", "3");
    private static final List<String> LEVELS = List.of("NO_AUTH", "AUTH", "AUTH_PRIV");

    static CredentialForm blank(String owner) {
        return new CredentialForm(owner, "", "2", "", "", "AUTH_PRIV", "SHA256", "", "AES128", "");
    }

    static CredentialForm of(Credential credential) {
        return new CredentialForm(
                ownerOf(credential),
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
                id(entry, CUSTOMER),
                id(entry, SITE),
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

    private Long id(Entry entry, String kind) {
        String chosen = Entry.text(owner);
        return chosen.startsWith(kind) ? entry.id("owner", chosen.substring(kind.length())) : null;
    }

    static String ownerOf(Credential credential) {
        if (credential.site != null) {
            return SITE + credential.site.id;
        }
        return credential.customer == null ? "" : CUSTOMER + credential.customer.id;
    }

    @Override
    public String toString() {
        return "CredentialForm " + name;
    }
}
