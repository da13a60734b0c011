package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.fleet.CustomerDraft;
import org.roundsman.fleet.Customers;
import org.roundsman.people.Role;

/** Checks after OWASP ASVS 5.0; the requirement's number stands beside each. */
@QuarkusTest
class SafetyDbTest {

    @Inject
    FleetFixture fixture;

    @Inject
    Customers customers;

    /** 3.4.3 to 3.4.6, 14.3.2. */
    @ParameterizedTest
    @ValueSource(strings = {"/", "/sign-in", "/no-such-page"})
    void pagesTellBrowsersWhatTheyNeverDo(String path) {
        Response page = fixture.browser(Role.TECHNICIAN, null).get(path);
        String policy = page.header("Content-Security-Policy");
        assertThat(policy).contains("default-src 'self'").contains("frame-ancestors 'none'");
        assertThat(policy).doesNotContain("unsafe");
        assertThat(page.header("X-Content-Type-Options")).isEqualTo("nosniff");
        assertThat(page.header("Referrer-Policy")).isEqualTo("same-origin");
        assertThat(page.header("Cache-Control")).isEqualTo("no-store");
        assertThat(page.contentType()).containsIgnoringCase("text/html").containsIgnoringCase("charset=utf-8");
    }

    /** No page needs what the policy forbids. */
    @ParameterizedTest
    @ValueSource(strings = {"/", "/?list=access-points", "/customers", "/credentials/new", "/own-health", "/password"})
    void pagesHoldNoInlineStyleOrScript(String path) {
        String page = fixture.browser(Role.OWNER, null).get(path).asString();
        assertThat(page).doesNotContainPattern("<[^>]+\\sstyle=").doesNotContain("<style");
        assertThat(page).doesNotContainPattern("<script(?![^>]*\\ssrc=)").doesNotContainPattern("<[^>]+\\son[a-z]+=");
    }

    /** 3.5.1. */
    @Test
    void aFormWithoutItsTokenChangesNothing() {
        Browser browser = fixture.browser(Role.TECHNICIAN, null);
        browser.get("/customers/new");
        Response answer = browser.request()
                .contentType(ContentType.URLENC)
                .formParam("name", "Forged Customer")
                .post("/customers");
        assertThat(answer.statusCode()).isEqualTo(400);
        assertThat(answer.asString()).contains("load the page again");
        assertThat(browser.send("/customers", "wrong", Map.of("name", "Forged Customer"))
                        .statusCode())
                .isEqualTo(400);
        assertThat(browser.get("/customers").asString()).doesNotContain("Forged Customer");
    }

    /** Fetch Metadata (W3C): a browser says that another site sent the form. */
    @Test
    void aFormFromAnotherSiteIsRefused() {
        Browser browser = fixture.browser(Role.TECHNICIAN, null);
        Response answer = browser.request()
                .header("Sec-Fetch-Site", "cross-site")
                .contentType(ContentType.URLENC)
                .formParam("anti-forgery", browser.token("/customers/new"))
                .formParam("name", "Foreign Customer")
                .post("/customers");
        assertThat(answer.statusCode()).isEqualTo(403);
        assertThat(browser.get("/customers").asString()).doesNotContain("Foreign Customer");
    }

    /** 1.2.1. */
    @Test
    void whatPeopleEnterStaysText() {
        customers.add(new CustomerDraft("<script>alert(1)</script> & \"Sons\"", ""));
        String page = fixture.browser(Role.TECHNICIAN, null).get("/customers").asString();
        assertThat(page).contains("&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;Sons&quot;");
        assertThat(page).doesNotContain("<script>alert");
    }

    /** 1.2.4. */
    @Test
    void aSearchIsNeverAQuestionToTheDatabase() {
        fixture.place("Saltmarsh");
        String page = fixture.browser(Role.TECHNICIAN, null)
                .request()
                .queryParam("search", "' OR 1=1--")
                .get("/")
                .asString();
        assertThat(page).contains("Nothing fits this search");
    }

    /** 16.5.1 and 13.4.2. */
    @Test
    void errorPagesTellNothingAboutOurInsides() {
        Response page = fixture.browser(Role.TECHNICIAN, null).get("/sites/999999999");
        assertThat(page.statusCode()).isEqualTo(404);
        assertThat(page.asString()).contains("There is no such page").doesNotContain("Exception");
        Response odd = fixture.browser(Role.TECHNICIAN, null).get("/sites/abc");
        assertThat(odd.statusCode()).isEqualTo(404);
        assertThat(odd.asString()).doesNotContain("Exception").doesNotContain("jakarta");
    }

    /** 2.4.1 of bad input: an address typed by hand. */
    @ParameterizedTest
    @ValueSource(
            strings = {"/?page=-3", "/?page=99999999999", "/?list=x&sort=y&condition=z&customer=q", "/?page=900000"})
    void anOddAddressStillShowsThePage(String path) {
        assertThat(fixture.browser(Role.TECHNICIAN, null).get(path).statusCode())
                .isEqualTo(200);
    }

    @ParameterizedTest
    @ValueSource(strings = {"/?", "/board?", "/?list=access-points&", "/board?list=access-points&"})
    void aPageBeyondTheEndIsTheLastOne(String list) {
        fixture.place("Saltmarsh");
        assertThat(fixture.browser(Role.TECHNICIAN, null)
                        .get(list + "page=99999")
                        .asString())
                .contains("As of")
                .doesNotContain("There is none of this kind", "page=99999", "Page 99999");
    }

    @Test
    void scriptsAndStylesComeFromUs() {
        Browser browser = fixture.browser(Role.TECHNICIAN, null);
        String page = browser.get("/").asString();
        assertThat(page).doesNotContainPattern("(src|href)=\"(https?:)?//");
        assertThat(browser.get("/webjars/htmx.org/dist/htmx.min.js").statusCode())
                .isEqualTo(200);
    }
}
