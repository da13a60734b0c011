package org.roundsman.people;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.web.Browser;

/** Checks after OWASP ASVS 5.0; the requirement's number stands beside each. */
@QuarkusTest
class SignInDbTest {

    private static final String PASSWORD = "heron-lantern-42";

    @Inject
    Accounts accounts;

    private String name;

    @BeforeEach
    void somebody() {
        name = "wren-" + Tokens.fresh().substring(0, 8);
        accounts.ensure(new NewPerson(name, "Wren", Role.TECHNICIAN, Optional.empty()), PASSWORD, false);
    }

    @Test
    void therightPasswordOpensTheFleetView() {
        Browser browser = Browser.of(name, PASSWORD);
        assertThat(browser.get("/").statusCode()).isEqualTo(200);
    }
}
