package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.EnumSet;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.people.Role;
import org.roundsman.people.SignedIn;
import org.roundsman.people.TokenScope;

/** Tokens and the guide, in a real browser. */
@QuarkusTest
class TokenPageTest {

    @TestHTTPResource("/")
    String address;

    @Inject
    MarkedPlaces places;

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    /** On one of the pages of everybody else's tokens. */
    private boolean isSomewhere(Page page, String text) {
        for (int number = 1; ; number++) {
            page.navigate(address + "tokens?others=" + number);
            if (page.textContent("main").contains(text)) {
                return true;
            }
            if (page.locator("a[rel=next]").count() == 0) {
                return false;
            }
        }
    }

    /** More than one page of them. */
    private void many() {
        SignedIn technician = places.somebody(Role.TECHNICIAN, null);
        for (int i = 1; i <= 50; i++) {
            places.token(technician, "stock list " + i, EnumSet.of(TokenScope.READ), null);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void aPersonMakesATokenUsesItAndRevokesIt(int width) {
        SignedIn owner = places.somebody(Role.OWNER, null);
        MarkedPlaces.Place place = places.place("Saltmarsh");
        places.token(places.somebody(Role.TECHNICIAN, null), "night export", EnumSet.of(TokenScope.READ), null);
        try (Screen screen = Screen.open(address, width)) {
            screen.signIn(owner.name(), FleetFixture.PASSWORD);
            Page page = screen.page();
            page.navigate(address + "password");
            page.click("text=Tokens for your programs");
            screen.check("tokens-empty");
            page.fill("#name", "stock list");
            page.check("input[value=change]");
            page.selectOption("#customer", String.valueOf(place.customerId()));
            page.click("text=Make it");
            screen.check("token-made");
            String token = page.textContent("#once");
            assertThat(Api.with(token).get("/me").jsonPath().getList("scopes")).containsExactly("read", "change");
            page.click("text=Back to the tokens");
            screen.check("tokens");
            assertThat(page.textContent("main")).contains("stock list", "from 127.0.0.1");
            assertThat(isSomewhere(page, "night export")).isTrue();
            page.navigate(address + "tokens");
            page.click("main table button >> nth=0");
            assertThat(page.textContent("main")).contains("revoked");
            assertThat(Api.with(token).get("/me").statusCode()).isEqualTo(401);
            manyInPages(screen, page);
            page.navigate(address + "api/docs");
            screen.check("api-guide");
            page.navigate(address + "api/problems/refused");
            screen.check("api-problem");
            page.navigate(address + "api/problems");
            screen.check("api-problems");
            screen.complaints();
        }
    }

    private void manyInPages(Screen screen, Page page) {
        many();
        page.navigate(address + "tokens");
        assertThat(page.locator("table").last().locator("tbody tr").count()).isEqualTo(25);
        page.click("a[rel=next]");
        page.waitForURL("**others=2*");
        screen.check("tokens-many");
        page.locator("text=Revoke").last().click();
        page.waitForCondition(() -> page.locator("table").last().innerText().contains("revoked"));
        assertThat(page.url()).contains("others=2");
    }
}
