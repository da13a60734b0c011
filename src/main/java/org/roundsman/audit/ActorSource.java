package org.roundsman.audit;

import java.util.Optional;

/** Tells who is behind the request that is being worked on. Implemented where requests come in. */
public interface ActorSource {

    /** Empty outside of a request, and where nobody is signed in. */
    Optional<Actor> current();
}
