package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.EnumSet;
import java.util.HexFormat;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.people.Accounts;
import org.roundsman.people.PeopleException;
import org.roundsman.people.Role;
import org.roundsman.people.SignedIn;
import org.roundsman.people.TokenScope;

@QuarkusTest
class TokensDbTest {

    private static final Pattern TOKEN = Pattern.compile("roundsman_[A-Za-z0-9_-]{43}");
    private static final Set<TokenScope> READ = EnumSet.of(TokenScope.READ);

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Inject
    Accounts accounts;

    private SignedIn wren;

    @BeforeEach
    void somebody() {
        wren = places.somebody(Role.TECHNICIAN, null);
    }

    private String token() {
        return places.token(wren, "stock list", READ, null);
    }

    private static void requireDead(String token, String why) {
        Response answer = Api.with(token).get("/me");
        assertThat(answer.statusCode()).isEqualTo(401);
        // RFC 6750, section 3 and 3.1
        assertThat(answer.header("WWW-Authenticate")).startsWith("Bearer ").contains("error=\"invalid_token\"");
        assertThat(answer.contentType()).isEqualTo("application/problem+json");
        assertThat(answer.jsonPath().getString("detail")).contains(why);
    }

    @Test
    void aTokenMadeOnThePageIsShownOnceAndOpensTheApi() {
        Browser browser = Browser.of(wren.name(), FleetFixture.PASSWORD);
        Response made = browser.post("/tokens", "/tokens", Map.of("name", "stock list", "days", "90"));
        Matcher shown = TOKEN.matcher(made.asString());
        assertThat(shown.find()).isTrue();
        assertThat(Api.with(shown.group()).get("/me").jsonPath().getString("name"))
                .isEqualTo(wren.name());
        assertThat(browser.get("/tokens").asString())
                .contains("stock list", "from 127.0.0.1")
                .doesNotContainPattern(TOKEN);
    }

    /** FIPS 180-4: the database holds the SHA-256 and not the token, computed here by the platform. */
    @Test
    void onlyTheHashIsKept() throws Exception {
        String token = token();
        byte[] hash = MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.US_ASCII));
        String hex = HexFormat.of().formatHex(hash);
        assertThat(places.number("select count(*) from personal_token where encode(hash, 'hex') = '" + hex + "'"))
                .isEqualTo(1);
        assertThat(places.number("select count(*) from personal_token t where t::text like '%" + token + "%'"))
                .isZero();
        assertThat(places.number("select count(*) from audit_entry t where t::text like '%" + token + "%'"))
                .isZero();
    }

    @Test
    void aTokenRunsOut() {
        String token = token();
        places.tell(
                "update personal_token set created_at = created_at - interval '1 day', expires_at = now() where"
                        + " account_id = ?",
                wren.accountId());
        requireDead(token, "ran out");
    }

    @Test
    void aRevokedTokenIsDead() {
        String token = token();
        Browser browser = Browser.of(wren.name(), FleetFixture.PASSWORD);
        long id = places.number("select id from personal_token where account_id = " + wren.accountId());
        assertThat(browser.post("/tokens", "/tokens/" + id + "/revoke", Map.of())
                        .statusCode())
                .isEqualTo(303);
        requireDead(token, "revoked");
    }

    /** 7.4.2. */
    @Test
    void disablingAnAccountEndsItsTokensForGood() {
        String token = token();
        accounts.disable(wren.accountId());
        requireDead(token, "do not know");
        accounts.enable(wren.accountId());
        requireDead(token, "revoked");
    }

    @Test
    void aResetPasswordEndsTheTokens() {
        String token = token();
        accounts.resetPassword(wren.accountId());
        requireDead(token, "do not know");
    }

    @Test
    void aTokenGivesNoMoreThanItsPersonsRoleAtTheMomentOfUse() {
        MarkedPlaces.Place place = places.place("Saltmarsh");
        String token = places.token(wren, "everything", EnumSet.allOf(TokenScope.class), null);
        String note = "{\"note\":\"seen\"}";
        assertThat(Api.with(token)
                        .patch("/customers/" + place.customerId(), note)
                        .statusCode())
                .isEqualTo(200);
        places.tell(
                "update account set role = 'VIEWER', customer_id = " + place.customerId() + " where id = ?",
                wren.accountId());
        assertThat(Api.with(token).get("/customers/" + place.customerId()).statusCode())
                .isEqualTo(200);
        assertThat(Api.with(token)
                        .patch("/customers/" + place.customerId(), note)
                        .statusCode())
                .isEqualTo(403);
        assertThat(Api.with(token).get("/customers").jsonPath().getList("items"))
                .hasSize(1);
    }

    @Test
    void aTokenNarrowedToACustomerDiesWhenItsPersonBecomesAnothersViewer() {
        MarkedPlaces.Place one = places.place("Saltmarsh");
        MarkedPlaces.Place other = places.place("Saltmarsh");
        String token = places.token(wren, "narrow", READ, one.customerId());
        places.tell(
                "update account set role = 'VIEWER', customer_id = " + other.customerId() + " where id = ?",
                wren.accountId());
        requireDead(token, "do not know");
    }

    @Test
    void aViewersTokenMayLookOnly() {
        SignedIn viewer = places.somebody(Role.VIEWER, places.place("Saltmarsh").customerId());
        assertThatThrownBy(() -> places.token(viewer, "more", EnumSet.of(TokenScope.CHANGE), null))
                .isInstanceOf(PeopleException.class)
                .hasMessageContaining("may look only");
        long other = places.place("Brackwater").customerId();
        assertThatThrownBy(() -> places.token(viewer, "other", READ, other)).hasMessageContaining("not yours to see");
    }

    @ParameterizedTest
    @CsvSource({
        "'', 90, , name",
        "list, 0, , days",
        "list, 367, , days",
        "list, soon, , days",
        "list, 90, everything, scopes"
    })
    void aBadEntryIsNamed(String name, String days, String scope, String field) {
        Browser browser = Browser.of(wren.name(), FleetFixture.PASSWORD);
        Map<String, String> fields = scope == null
                ? Map.of("name", name, "days", days)
                : Map.of("name", name, "days", days, "scopes", scope);
        Response answer = browser.post("/tokens", "/tokens", fields);
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.asString()).contains("id=\"" + field + "-wrong\"").doesNotContainPattern(TOKEN);
    }

    @Test
    void aNameIsUsedOnceWhileItsTokenIsGood() {
        token();
        assertThatThrownBy(this::token).hasMessageContaining("a token of this name already");
        places.tell("update personal_token set revoked_at = now() where account_id = ?", wren.accountId());
        assertThat(token()).matches(TOKEN);
    }

    @Test
    void nobodyButTheOwnerSeesOrEndsAnothersToken() {
        String token = token();
        long id = places.number("select id from personal_token where account_id = " + wren.accountId());
        String path = "/tokens/" + id + "/revoke";
        Browser other = fixture.browser(Role.TECHNICIAN, null);
        assertThat(other.get("/tokens").asString()).doesNotContain(wren.name());
        assertThat(other.post("/tokens", path, Map.of()).statusCode()).isEqualTo(404);
        assertThat(Api.with(places.token(Role.OWNER, null, READ, null))
                        .delete("/tokens/" + id)
                        .statusCode())
                .isEqualTo(404);
        Browser owner = fixture.browser(Role.OWNER, null);
        long pages = places.number("select count(*) from personal_token") / 25 + 1;
        assertThat(LongStream.rangeClosed(1, pages)
                        .anyMatch(page ->
                                owner.get("/tokens?others=" + page).asString().contains(wren.name())))
                .isTrue();
        assertThat(owner.post("/tokens", path, Map.of()).statusCode()).isEqualTo(303);
        requireDead(token, "revoked");
    }

    @Test
    void aTokenMayEndItself() {
        String token = token();
        long id = Api.with(token).get("/tokens").jsonPath().getLong("items[0].id");
        assertThat(Api.with(token).delete("/tokens/" + id).statusCode()).isEqualTo(204);
        requireDead(token, "revoked");
        assertThat(places.number("select count(*) from audit_entry where action = 'revoked' and via = 'API' and token ="
                        + " 'stock list' and address = '127.0.0.1' and account_id = " + wren.accountId()))
                .isEqualTo(1);
    }

    @Test
    void makingATokenIsNotedInTheAudit() {
        Browser browser = Browser.of(wren.name(), FleetFixture.PASSWORD);
        browser.post("/tokens", "/tokens", Map.of("name", "stock list", "days", "90", "scopes", "change"));
        assertThat(places.number("select count(*) from audit_entry where action = 'added' and subject = 'token' and via"
                        + " = 'PAGE' and changes::text like '%read, change%' and account_id = " + wren.accountId()))
                .isEqualTo(1);
    }
}
