package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.people.Role;

/** The owner's first page, and the flags of the fleet view, in a real browser. */
@QuarkusTest
class AheadPageTest {

    @TestHTTPResource("/")
    String address;

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Inject
    Clock clock;

    private FleetFixture.Place place;
    private String model;
    private String line;

    /** One access point whose warranty ends in twenty days, on a firmware that was withdrawn. */
    @BeforeEach
    void aPlace() {
        place = fixture.place("Brackwater");
        model = "A-" + place.siteId();
        line = "Line " + place.siteId();
        LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneId.of("Europe/Berlin"));
        places.tell("insert into firmware_line (name, scheme) values ('" + line + "', 'SEMANTIC')");
        places.tell("insert into firmware_release (line_id, version, stand, reason, withdrawn_on) select id, '1.0.0',"
                + " 'WITHDRAWN', 'invented', current_date from firmware_line where name = '" + line + "'");
        places.tell("insert into model (maker, name, kind, list_price, currency, terms_kind, terms_from, terms_months,"
                + " firmware_line_id, end_of_support, end_of_support_source) select 'Tamarack Radio', '" + model
                + "', 'ACCESS_POINT', 189.90, 'EUR', 'MONTHS', 'PURCHASE', 12, id, date '" + today.plusDays(200)
                + "', 'a letter' from firmware_line where name = '" + line + "'");
        places.tell("update device set model_id = (select id from model where name = '" + model + "') where id = "
                + place.deviceId());
        fact("SERIAL", "A-" + place.deviceId());
        fact("FIRMWARE", "1.0.0");
        places.tell(
                "insert into purchase (customer_id, serial, bought_on) values (" + place.customerId() + ", ?, date '"
                        + today.plusDays(20).minusMonths(12) + "')",
                "A-" + place.deviceId());
    }

    private void fact(String fact, String value) {
        places.tell(
                "insert into device_fact (device_id, fact, value, since) values (" + place.deviceId() + ", '" + fact
                        + "', ?, now())",
                value);
    }

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void anOwnerBeginsWithTheYearAhead(int width) {
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(fixture.person(Role.OWNER, null), FleetFixture.PASSWORD);
            assertThat(page.url()).endsWith("/ahead");
            screen.check("ahead");
            String whole = page.locator("main").innerText();
            assertThat(whole)
                    .contains("whose firmware was withdrawn")
                    .contains("whose warranty ends within 30 days")
                    .contains("Support for Tamarack Radio " + model)
                    .contains("a letter")
                    .contains(place.customer());
            page.locator(".decisions a:has-text('firmware was withdrawn')").click();
            page.waitForURL("**/firmware/devices?status=withdrawn");
            assertThat(page.locator("main").innerText()).contains(place.customer());
            screen.complaints();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void theFleetViewIsCutByItsFlags(int width) {
        String mine = "?list=access-points&customer=" + place.customerId();
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(fixture.person(Role.TECHNICIAN, null), FleetFixture.PASSWORD);
            page.navigate(address + mine + "&firmware=withdrawn&warranty=ends-within-30");
            assertThat(page.locator("tbody").innerText())
                    .contains("withdrawn")
                    .contains("1.0.0")
                    .contains("ends within 30 days");
            screen.check("fleet-flags");
            assertThat(page.inputValue("#firmware")).isEqualTo("withdrawn");
            page.navigate(address + mine + "&firmware=current");
            assertThat(page.locator("#board").innerText()).contains("Nothing fits this search and filter");
            page.navigate(address + "?list=sites&customer=" + place.customerId() + "&warranty=ends-within-30");
            assertThat(page.locator("tbody").innerText()).contains("ends within 180 days", "the first on");
            page.navigate(address + "devices/" + place.deviceId());
            assertThat(page.locator("section:has(#stands)").innerText())
                    .contains("1.0.0 was withdrawn")
                    .contains(" + 12 months = ");
            screen.complaints();
        }
    }

    @Test
    void aViewerSeesTheirOwnFlagsAndNoPrices() {
        Browser viewer = fixture.browser(Role.VIEWER, place.customerId());
        for (String path : new String[] {"/ahead", "/firmware", "/warranty", "/claims", "/spares", "/models"}) {
            assertThat(viewer.get(path).statusCode()).as(path).isEqualTo(403);
        }
        String fleet = viewer.get("/?list=access-points&firmware=withdrawn").asString();
        assertThat(fleet).contains("ends within 30 days").doesNotContain("189.90");
        assertThat(viewer.get("/devices/" + place.deviceId()).asString())
                .contains("+ 12 months =")
                .doesNotContain("189.90");
    }
}
