package org.roundsman.people;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** RFC 6265bis, section 4.1.3.2: browsers keep a __Host- cookie only when it is Secure, so plain http has another name. */
class SessionCookieTest {

    @Test
    void overHttpsTheCookieIsBoundToItsHost() {
        assertThat(SessionCookie.nameFor(true)).startsWith("__Host-");
        assertThat(SessionCookie.nameFor(false)).doesNotStartWith("__");
    }
}
