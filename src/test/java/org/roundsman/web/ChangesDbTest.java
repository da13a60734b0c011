package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.fleet.CustomerDraft;
import org.roundsman.fleet.Customers;
import org.roundsman.people.Role;

@QuarkusTest
class ChangesDbTest {

    @Inject
    FleetFixture fixture;

    @Inject
    Customers customers;

    private FleetFixture.Place place;
    private String name;
    private Browser browser;

    @BeforeEach
    void place() {
        place = fixture.place("Thistledown");
        name = fixture.person(Role.TECHNICIAN, null);
        browser = Browser.of(name, FleetFixture.PASSWORD);
    }

    private void rename(String note) {
        String path = "/customers/" + place.customerId();
        Map<String, String> fields = Map.of("name", place.customer(), "note", note);
        assertThat(browser.post(path + "/edit", path, fields).statusCode()).isEqualTo(303);
    }

    @Test
    void aChangeOnAPageIsFoundWithNameAddressAndBothValues() {
        rename("<b>new</b> note");
        String page = browser.get("/changes?who=" + name).asString();
        assertThat(page).contains(name).contains("changed customer").contains("from 127.0.0.1");
        assertThat(page)
                .contains("Invented")
                .contains("&lt;b&gt;new&lt;/b&gt; note")
                .doesNotContain("<b>new</b>");
        assertThat(browser.get("/changes?text=" + name + "&action=removed").asString())
                .contains("Nothing fits this search");
    }

    @Test
    void aDeviceASiteAndACustomerLeadToTheirOwnChanges() {
        String device = "/changes?kind=device&amp;subject=" + place.deviceId();
        assertThat(browser.get("/devices/" + place.deviceId()).asString()).contains(device);
        assertThat(browser.get(device.replace("&amp;", "&")).asString())
                .contains("Pier AP of " + place.customer())
                .contains("Only the changes of one device")
                .doesNotContain("added customer");
        String site = "/changes?kind=site&amp;subject=" + place.siteId();
        assertThat(browser.get("/sites/" + place.siteId()).asString()).contains(site);
        String ofCustomer = "/changes?customer=" + place.customerId();
        assertThat(browser.get("/customers").asString()).contains(ofCustomer + "\"");
        assertThat(browser.get(ofCustomer).asString())
                .contains("added customer")
                .contains("added device");
    }

    @Test
    void pagesGoOnToTheOldest() {
        IntStream.range(0, 60)
                .forEach(i -> customers.change(place.customerId(), new CustomerDraft(place.customer(), "n" + i)));
        String first = browser.get("/changes?customer=" + place.customerId()).asString();
        assertThat(first).contains("id=\"page-older\"").doesNotContain("id=\"page-newest\"");
        String older = first.replaceAll("(?s).*id=\"page-older\" rel=\"next\" href=\"([^\"]+)\".*", "$1")
                .replace("&amp;", "&");
        String second = browser.request().urlEncodingEnabled(false).get(older).asString();
        assertThat(second).contains("added customer").contains("id=\"page-newest\"");
        assertThat(ids(first)).hasSize(50).doesNotContainAnyElementsOf(ids(second));
        assertThat(ids(second)).hasSize(14);
    }

    private static List<String> ids(String page) {
        return java.util.regex.Pattern.compile("id=\"(change-\\d+)\"")
                .matcher(page)
                .results()
                .map(found -> found.group(1))
                .toList();
    }

    @Test
    void theDownloadHoldsAllThatIsFoundAndNoFormula() {
        IntStream.range(0, 70)
                .forEach(i -> customers.change(place.customerId(), new CustomerDraft(place.customer(), "=" + i)));
        Response answer = browser.get("/changes.csv?customer=" + place.customerId() + "&kind=customer");
        assertThat(answer.contentType()).startsWith("text/csv");
        assertThat(answer.header("Content-Disposition")).contains("attachment");
        String text = answer.asString();
        assertThat(text.lines().filter(line -> line.contains(",changed,customer,")))
                .hasSize(70);
        assertThat(text).contains("'=69").doesNotContain(",=69");
        assertThat(text).doesNotContain(",device,");
    }

    @Test
    void aViewerSeesNoChangesAtAll() {
        Browser viewer = fixture.browser(Role.VIEWER, place.customerId());
        for (String path : List.of("/changes", "/changes.csv", "/changes?customer=" + place.customerId())) {
            assertThat(viewer.get(path).statusCode()).as(path).isEqualTo(403);
        }
        assertThat(viewer.get("/devices/" + place.deviceId()).asString()).doesNotContain("/changes");
        for (Role role : List.of(Role.ACCOUNT_MANAGER, Role.OWNER)) {
            assertThat(fixture.browser(role, null).get("/changes").statusCode()).isEqualTo(200);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "?before=x",
                "?before=1-",
                "?before=99999999999999999-1",
                "?subject=-1&kind=device",
                "?customer=abc",
                "?from=yesterday&to=tomorrow",
                "?from=2026-01-01T00:00&to=2026-01-02T00:00",
                "?from=%2B999999999-12-31T23:59",
                "?to=%2B999999999-12-31T23:59",
                "?text=%00&who=%00&kind=%00&action=%00",
                "?text='%20OR%201=1--",
                "?text=%F0%9F%90%A6",
                "?text=a%27%29%3A%2A%7C%28"
            })
    void anOddAddressStillShowsThePage(String query) {
        assertThat(browser.request()
                        .urlEncodingEnabled(false)
                        .get("/changes" + query)
                        .statusCode())
                .isEqualTo(200);
    }

    @Test
    void theTimeRangeIsKept() {
        rename("in range");
        assertThat(browser.get("/changes?who=" + name + "&from=2020-01-01T00:00")
                        .asString())
                .contains("changed customer");
        assertThat(browser.get("/changes?who=" + name + "&to=2020-01-01T00:00").asString())
                .contains("Nothing fits this search")
                .contains("value=\"2020-01-01T00:00\"");
    }
}
