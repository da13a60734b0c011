package org.roundsman.people;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.web.Browser;

/** Checks after OWASP ASVS 5.0; the requirement's number stands beside each. */
@QuarkusTest
class SignInDbTest {

    private static final String PASSWORD = "heron-lantern-42";

    @Inject
    PeopleSettings settings;

    @Inject
    Accounts accounts;

    @Inject
    DataSource database;

    private String name;

    @BeforeEach
    void somebody() {
        name = someone(false);
    }

    private String someone(boolean mustChange) {
        String fresh = "wren-" + Tokens.fresh().substring(0, 12).replaceAll("[^A-Za-z0-9]", "x");
        accounts.ensure(new NewPerson(fresh, "Wren", Role.TECHNICIAN, Optional.empty()), PASSWORD, mustChange);
        return fresh;
    }

    @Test
    void theRightPasswordOpensThePages() {
        assertThat(Browser.of(name, PASSWORD).get("/").statusCode()).isEqualTo(200);
        assertThat(Browser.of(name.toUpperCase(), PASSWORD).get("/").statusCode())
                .isEqualTo(200);
    }

    @Test
    void withoutASignInThereIsOnlyTheSignInPage() {
        Response answer = new Browser().get("/?search=pier");
        assertThat(answer.statusCode()).isEqualTo(302);
        assertThat(answer.header("Location")).endsWith("/sign-in?next=%2F%3Fsearch%3Dpier");
    }

    /** 6.3.1; unknown names answer in the same words, so that nobody learns which there are. */
    @Test
    void fiveWrongPasswordsLockTheAccountEvenForTheRightOne() {
        Browser browser = new Browser();
        String unknown = browser.signIn("nobody-" + name, "wrong").asString();
        for (int i = 0; i < 5; i++) {
            Response refused = browser.signIn(name, "wrong");
            assertThat(refused.statusCode()).isEqualTo(401);
            assertThat(fault(refused.asString())).isEqualTo(fault(unknown));
        }
        assertThat(browser.signIn(name, PASSWORD).statusCode()).isEqualTo(401);
        accounts.unlock(id());
        assertThat(browser.signIn(name, PASSWORD).statusCode()).isEqualTo(303);
    }

    private static String fault(String page) {
        return page.replaceAll("(?s).*role=\"alert\">([^<]*)<.*", "$1");
    }

    /** 3.3.2 and 3.3.4. Secure and the __Host- prefix of 3.3.1 come with https; see SessionCookieTest. */
    @Test
    void theCookieIsOutOfReachForScriptsAndOtherSites() {
        String cookie = new Browser()
                .signIn(name, PASSWORD).headers().getValues("Set-Cookie").stream()
                        .filter(value -> value.startsWith("roundsman="))
                        .findFirst()
                        .orElseThrow();
        assertThat(cookie).contains("HttpOnly").contains("SameSite=Lax").contains("Path=/");
    }

    /** 7.2.4. */
    @Test
    void everySignInHasATokenOfItsOwn() {
        String first = token(new Browser().signIn(name, PASSWORD));
        String second = token(new Browser().signIn(name, PASSWORD));
        assertThat(first).isNotEqualTo(second);
        // 256 bits in base64url without padding (RFC 4648) are 43 characters
        assertThat(first).hasSize(43);
    }

    private static String token(Response answer) {
        return answer.cookie("roundsman");
    }

    /** 11.5.1 and 7.x: a copy of the table opens nothing. */
    @Test
    void theDatabaseHoldsNeitherTokensNorPasswords() throws SQLException {
        String token = token(new Browser().signIn(name, PASSWORD));
        assertThat(ask("select count(*) from sign_in where token_hash = sha256(?::bytea)", token))
                .isEqualTo("1");
        assertThat(ask("select password_hash from account where name = ?", name))
                .matches("\\$2[aby]\\$04\\$.{53}");
    }

    /** Tests replace it by the least cost; this is what somebody gets who sets none. */
    @Test
    void theUsualCostOfAPasswordIsThatOfTheSettings() {
        assertThat(new Passwords(settings).hash(PASSWORD)).matches("\\$2[aby]\\$12\\$.{53}");
    }

    /** 7.4.1. */
    @Test
    void theOldCookieIsDeadAfterSigningOut() {
        Browser browser = Browser.of(name, PASSWORD);
        String form = browser.token("/password");
        Browser copy = browser.copy();
        assertThat(copy.get("/").statusCode()).isEqualTo(200);
        assertThat(browser.send("/sign-out", form, Map.of()).statusCode()).isEqualTo(303);
        assertThat(copy.get("/").statusCode()).isEqualTo(302);
    }

    /** 7.4.2. */
    @Test
    void disablingAnAccountEndsItsSignIns() {
        Browser browser = Browser.of(name, PASSWORD);
        accounts.disable(id());
        assertThat(browser.get("/").statusCode()).isEqualTo(302);
        assertThat(new Browser().signIn(name, PASSWORD).statusCode()).isEqualTo(401);
    }

    /** 7.3.1: 8 hours without a request, and 7 days in any case. */
    @Test
    void signInsRunOut() throws SQLException {
        Browser idle = Browser.of(name, PASSWORD);
        tell("update sign_in set seen_at = now() - interval '8 hours 1 minute' where account_id = " + id());
        assertThat(idle.get("/").statusCode()).isEqualTo(302);
        Browser old = Browser.of(name, PASSWORD);
        tell("update sign_in set started_at = now() - interval '7 days 1 minute' where account_id = " + id());
        assertThat(old.get("/").statusCode()).isEqualTo(302);
    }

    /** 6.3.2: a password that was handed over opens nothing but its own change. */
    @Test
    void aFirstPasswordMustBeChanged() {
        String fresh = someone(true);
        Browser browser = new Browser();
        assertThat(browser.signIn(fresh, PASSWORD).header("Location")).endsWith("/password");
        assertThat(browser.get("/").header("Location")).endsWith("/password");
        Map<String, String> weak = Map.of("old", PASSWORD, "password", "password", "again", "password");
        assertThat(browser.post("/password", "/password", weak).statusCode()).isEqualTo(422);
        Map<String, String> good = Map.of("old", PASSWORD, "password", "otter-lamp-77", "again", "otter-lamp-77");
        assertThat(browser.post("/password", "/password", good).statusCode()).isEqualTo(303);
        assertThat(browser.get("/").statusCode()).isEqualTo(200);
    }

    @Test
    void changingThePasswordEndsTheOtherSignIns() {
        Browser other = Browser.of(name, PASSWORD);
        Browser mine = Browser.of(name, PASSWORD);
        Map<String, String> good = Map.of("old", PASSWORD, "password", "otter-lamp-77", "again", "otter-lamp-77");
        mine.post("/password", "/password", good);
        assertThat(mine.get("/").statusCode()).isEqualTo(200);
        assertThat(other.get("/").statusCode()).isEqualTo(302);
    }

    @Test
    void theFirstStartMadeAnOwner() {
        assertThat(accounts.hasOwner()).isTrue();
    }

    private long id() {
        return accounts.all().stream()
                .filter(person -> person.name().equals(name))
                .findFirst()
                .orElseThrow()
                .id();
    }

    private String ask(String question, String parameter) throws SQLException {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(question)) {
            statement.setString(1, parameter);
            try (ResultSet row = statement.executeQuery()) {
                row.next();
                return row.getString(1);
            }
        }
    }

    private void tell(String change) throws SQLException {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(change)) {
            assertThat(statement.executeUpdate()).isPositive();
        }
    }
}
