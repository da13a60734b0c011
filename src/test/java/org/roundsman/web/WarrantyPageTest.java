package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.FilePayload;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.people.Role;

/** Warranty as people use it, in a real browser. */
@QuarkusTest
class WarrantyPageTest {

    private static final byte[] PDF = "%PDF-1.7 invented".getBytes(StandardCharsets.US_ASCII);

    @TestHTTPResource("/")
    String address;

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Inject
    Clock clock;

    private FleetFixture.Place place;
    private String manager;
    private LocalDate today;

    /** Three access points that end within the year, one that ended, one of which nothing is known. */
    @BeforeEach
    void aPlace() {
        place = fixture.place("Saltmarsh");
        manager = fixture.person(Role.ACCOUNT_MANAGER, null);
        today = LocalDate.ofInstant(clock.instant(), ZoneId.of("Europe/Berlin"));
        places.tell("insert into model (maker, name, kind, list_price, currency, terms_kind, terms_from, terms_months,"
                + " end_of_support) values ('Tamarack Radio', 'P-" + place.siteId()
                + "', 'ACCESS_POINT', 189.90, 'EUR', 'MONTHS', 'PURCHASE', 12, date '2026-01-31')");
        places.tell("update device set model_id = (select max(id) from model) where id = " + place.deviceId());
        unit("pier-2", today.plusDays(20));
        unit("pier-3", today.plusDays(100));
        unit("pier-4", today.plusDays(300));
        unit("pier-5", today.minusDays(40));
    }

    private void unit(String name, LocalDate last) {
        long id = fixture.device(place.siteId(), place.credentialId(), name, name + ".example", 161);
        places.tell("update device set model_id = (select max(id) from model) where id = " + id);
        places.tell(
                "insert into device_fact (device_id, fact, value, since) values (" + id + ", 'SERIAL', ?, now())",
                serial(name));
        places.tell(
                "insert into purchase (customer_id, serial, bought_on) values (" + place.customerId() + ", ?, date '"
                        + last.minusMonths(12) + "')",
                serial(name));
    }

    private String serial(String name) {
        return "SN-" + place.siteId() + "-" + name;
    }

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    private static Locator button(Page page, String name) {
        return page.getByRole(
                AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true));
    }

    private static Locator link(Page page, String name) {
        return page.getByRole(
                AriaRole.LINK, new Page.GetByRoleOptions().setName(name).setExact(true));
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void fromABarToAUnitToItsEvidence(int width) {
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(manager, FleetFixture.PASSWORD);
            page.navigate(address + "warranty?customer=" + place.customerId());
            screen.check("warranty-year");
            assertThat(page.locator("svg.year a").count()).isEqualTo(12);
            assertThat(page.locator("section:has(#beside)").innerText())
                    .contains("Terms or date missing")
                    .contains("Past the maker’s support");
            assertThat(page.locator("section:has(#customers)").innerText()).contains(place.customer());
            page.locator("svg.year a[aria-label$=': 1 unit']").first().focus();
            page.keyboard().press("Enter");
            page.waitForURL(url -> url.contains("/warranty/units?"));
            screen.check("warranty-units");
            assertThat(page.locator("main").innerText()).contains("1 unit").contains("189.90\u00a0EUR");
            page.locator("tbody a").first().click();
            screen.check("warranty-unit");
            assertThat(page.locator("section:has(#cover)").innerText())
                    .contains("bought ")
                    .contains(" + 12 months = ");
            page.locator("#file").setInputFiles(new FilePayload("invoice 7.pdf", "application/pdf", PDF));
            button(page, "Attach").click();
            assertThat(page.locator("section:has(#evidence)").innerText()).contains("invoice 7.pdf");
            page.locator("#file")
                    .setInputFiles(new FilePayload("not-one.pdf", "application/pdf", new byte[] {1, 2, 3, 4}));
            button(page, "Attach").click();
            assertThat(page.locator("#file-wrong").innerText()).contains("neither a PDF nor");
            screen.check("warranty-evidence");
            screen.complaints("422");
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void aPurchaseIsEnteredAndTheDayIsWorkedOut(int width) {
        places.tell(
                "insert into device_fact (device_id, fact, value, since) values (" + place.deviceId()
                        + ", 'SERIAL', ?, now())",
                serial("first"));
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(manager, FleetFixture.PASSWORD);
            page.navigate(address + "warranty/units/devices/" + place.deviceId());
            assertThat(page.locator("section:has(#cover)").innerText()).contains("no date of purchase is entered");
            screen.check("warranty-missing");
            link(page, "Enter the purchase").click();
            assertThat(page.inputValue("#serial")).isEqualTo(serial("first"));
            page.fill("#boughtOn", "2026-02-28");
            page.fill("#price", "12,345");
            button(page, "Save").click();
            assertThat(page.locator("#currency-wrong").innerText()).contains("EUR");
            screen.check("warranty-purchase-wrong");
            page.fill("#price", "150,50");
            page.fill("#currency", "EUR");
            button(page, "Save").click();
            assertThat(page.locator("section:has(#cover)").innerText())
                    .contains("bought 2026-02-28 + 12 months = 2027-02-28");
            assertThat(page.locator("section:has(#purchase)").innerText()).contains("150.50\u00a0EUR");
            page.navigate(address + "warranty/purchases/new?customer=" + place.customerId());
            screen.check("warranty-purchase-new");
            screen.complaints("422");
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void aContractIsEnteredAndCoversUnits(int width) {
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(manager, FleetFixture.PASSWORD);
            page.navigate(address + "warranty/contracts/new?customer=" + place.customerId());
            screen.check("warranty-contract-form");
            page.fill("#number", "C-1042");
            page.fill("#from", today.toString());
            page.fill("#to", today.minusDays(1).toString());
            button(page, "Save").click();
            assertThat(page.locator("#to-wrong").innerText()).contains("not before");
            page.fill("#to", today.plusYears(2).toString());
            button(page, "Save").click();
            page.fill("#serials", serial("pier-2") + "\nNOBODY-7");
            button(page, "Add these serial numbers").click();
            assertThat(page.locator("main [role=alert]").innerText()).contains("NOBODY-7");
            assertThat(page.locator(".note[role=status]:not(#live-note)").innerText())
                    .contains("1 unit added");
            screen.check("warranty-contract-told");
            page.selectOption("#site", String.valueOf(place.siteId()));
            button(page, "Add these units").click();
            assertThat(page.locator(".note[role=status]:not(#live-note)").innerText())
                    .contains("3 units added");
            screen.check("warranty-contract");
            page.navigate(address + "warranty/contracts");
            screen.check("warranty-contracts");
            screen.complaints("422");
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void renewalsAndCalendars(int width) {
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(manager, FleetFixture.PASSWORD);
            page.navigate(address + "warranty/renewals?customer=" + place.customerId() + "&from=" + today + "&to="
                    + today.plusDays(120));
            assertThat(page.locator("main").innerText())
                    .contains("2 units at list price")
                    .contains("379.80\u00a0EUR");
            screen.check("warranty-renewals");
            page.navigate(address + "warranty/calendars");
            page.fill("#name", "phone");
            button(page, "Make it").click();
            assertThat(page.locator("#once").innerText())
                    .startsWith(address + "calendar/")
                    .endsWith(".ics");
            screen.check("warranty-calendar-made");
            page.navigate(address + "warranty/calendars");
            screen.check("warranty-calendars");
            button(page, "End it: phone").first().click();
            assertThat(page.locator("section:has(#own)").innerText()).contains("ended");
            screen.complaints();
        }
    }
}
