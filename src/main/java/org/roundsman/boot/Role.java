package org.roundsman.boot;

/** What this process is: one program, several roles. */
enum Role {
    /** The service itself. */
    CENTRAL,
    /** The service with the invented fleet in the same process. */
    DEMO,
    /** The invented fleet's agents alone, without service and database. */
    AGENTS,
    /** No service: changes the key under which secrets are sealed, and ends. */
    ROTATE_KEY
}
