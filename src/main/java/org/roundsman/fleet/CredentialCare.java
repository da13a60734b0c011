package org.roundsman.fleet;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;

/** Looks after all credentials once at each start: a newer program may know more words, or binds secrets tighter. */
@ApplicationScoped
class CredentialCare {

    /** Before the rounds begin. */
    private static final int EARLY = 4_000;

    private final Credentials credentials;

    CredentialCare(Credentials credentials) {
        this.credentials = credentials;
    }

    void onStart(@Observes @Priority(EARLY) StartupEvent started) {
        credentials.lookAfter();
    }
}
