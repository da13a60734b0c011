package org.roundsman.people;

/** How an attempt to sign in ended. */
public sealed interface SignInResult {

    /**
     * Let in.
     *
     * @param token for the browser's cookie; we keep only its hash
     */
    record Welcome(String token, SignedIn person) implements SignInResult {}

    /** Unknown name, wrong password, locked or disabled: the answer does not say which. */
    record Refused() implements SignInResult {}

    /** Too many attempts at this moment; the password was not looked at. */
    record Busy() implements SignInResult {}
}
