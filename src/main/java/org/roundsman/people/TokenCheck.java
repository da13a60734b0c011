package org.roundsman.people;

import java.time.Instant;

/** What came of looking up a personal token. */
public sealed interface TokenCheck {

    /** Its person may go on, within the token. */
    record Good(SignedIn person, UsedToken token) implements TokenCheck {}

    /** It opens nothing. */
    sealed interface Refusal extends TokenCheck {}

    /** The request came without a token. */
    record Missing() implements Refusal {}

    /** We do not know it, or its person may not sign in any more: the answer does not say which. */
    record Unknown() implements Refusal {}

    record Expired(Instant at) implements Refusal {}

    record Revoked(Instant at) implements Refusal {}

    /** Too many tokens from this address were wrong; this one was not looked at. */
    record Braked(long retryAfterSeconds) implements Refusal {}

    /** The database does not answer. */
    record Away() implements Refusal {}
}
