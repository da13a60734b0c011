package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.claims.UnitsFixture;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.Devices;
import org.roundsman.people.Role;

/** Claims, replacements and spares as people use them, in a real browser. */
@QuarkusTest
class ClaimsPageTest {

    @TestHTTPResource("/")
    String address;

    @Inject
    FleetFixture fixture;

    @Inject
    UnitsFixture units;

    @Inject
    Devices devices;

    @Inject
    AlarmHouse houses;

    @Inject
    Clock clock;

    private final String old = UnitsFixture.serial();
    private final String fresh = UnitsFixture.serial();
    private FleetFixture.Place place;

    @BeforeEach
    void aUnitInItsPlace() {
        place = fixture.place("Saltmarsh");
        long model = units.model("TR-22");
        DeviceDraft draft = DeviceDraft.of(
                devices.find(CustomerScope.everyone(), place.deviceId()).orElseThrow());
        devices.change(place.deviceId(), draft.ofModel(model));
        units.says(place.deviceId(), place.siteId(), clock.instant().minus(Duration.ofDays(2)), old);
        units.follow();
    }

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    private static void press(Page page, String name) {
        tap(page, AriaRole.BUTTON, name);
    }

    private static void tap(Page page, AriaRole role, String name) {
        page.getByRole(role, new Page.GetByRoleOptions().setName(name).setExact(true))
                .first()
                .click();
    }

    private Screen screen(int width) {
        Screen screen = Screen.open(address, width);
        screen.signIn(fixture.person(Role.TECHNICIAN, null), FleetFixture.PASSWORD);
        return screen;
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void aClaimGoesFromTheDeviceToItsEnd(int width) {
        try (Screen screen = screen(width)) {
            Page page = screen.page();
            page.navigate(address + "devices/" + place.deviceId());
            assertThat(page.locator("section:has(#unit-here)").innerText()).contains(old, "read from the device");
            screen.check("claims-device");
            tap(page, AriaRole.LINK, "Open a claim");
            page.fill("#fault", "Restarts by itself");
            page.fill("#party", "Tamarack Radio");
            screen.check("claims-new");
            press(page, "Open the claim");
            assertThat(page.locator("h1").innerText()).contains("Tamarack Radio TR-22");
            screen.check("claims-one");
            page.fill("#tracking", "Parcel 1");
            press(page, "Save");
            page.fill("#note", "Handed over");
            press(page, "It was sent");
            assertThat(page.locator("section:has(#history)").innerText()).contains("sent", "Handed over");
            String claim = page.url();
            tap(page, AriaRole.LINK, "Sheet to send along");
            assertThat(page.locator(".visit").innerText())
                    .contains(old, "Restarts by itself", "Working at height", "Mains", "Local codes");
            screen.check("claims-sheet");
            page.navigate(address + "claims");
            screen.check("claims-list");
            page.navigate(claim);
            press(page, "They refused it");
            press(page, "Close the claim");
            assertThat(page.locator(".head").first().innerText()).contains("closed");
            screen.complaints();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void aSpareTakesThePlaceAndEachUnitHasAPage(int width) {
        try (Screen screen = screen(width)) {
            Page page = screen.page();
            fillTheStore(screen);
            page.navigate(address + "devices/" + place.deviceId() + "/replace");
            String option =
                    page.locator("#spare option:has-text('" + fresh + "')").getAttribute("value");
            page.selectOption("#spare", option);
            screen.check("claims-replace");
            press(page, "The new unit is there");
            assertThat(page.locator("section:has(#unit-here)").innerText())
                    .contains(fresh, "The device has not said its new serial number yet");
            units.says(place.deviceId(), place.siteId(), clock.instant().plusSeconds(1), fresh + "-other");
            units.follow();
            page.reload();
            assertThat(page.locator("section:has(#unit-here)").innerText())
                    .contains("The device says serial number " + fresh);
            screen.check("claims-contradiction");
            press(page, "The replacement did not happen");
            assertThat(page.locator("section:has(#unit-here)").innerText())
                    .contains(old)
                    .doesNotContain("announced");
            tap(page, AriaRole.LINK, old);
            screen.check("claims-unit");
            screen.complaints();
        }
    }

    private void fillTheStore(Screen screen) {
        Page page = screen.page();
        page.navigate(address + "store-rooms");
        page.fill("#name", "Van " + fresh);
        screen.check("claims-rooms");
        press(page, "Add");
        page.fill("#least", "2");
        press(page, "Set");
        assertThat(page.locator("section:has(#counts)").innerText()).contains("short of 2");
        screen.check("claims-room");
        page.navigate(address + "spares/new");
        page.fill("#serial", fresh);
        page.selectOption(
                "#model", new com.microsoft.playwright.options.SelectOption().setLabel("Tamarack Radio TR-22"));
        page.selectOption("#where", new com.microsoft.playwright.options.SelectOption().setLabel("Van " + fresh));
        screen.check("claims-spare-new");
        press(page, "Save");
        assertThat(page.locator("h1").innerText()).contains(fresh);
        screen.check("claims-spare");
        page.navigate(address + "spares");
        assertThat(page.locator("section:has(#all)").innerText()).contains("Page 1 of");
        screen.check("claims-spares");
    }

    @Test
    void theSheetOnPaperHoldsTheUnitAndTheCautionsAndNoPrice() throws IOException {
        Browser browser = fixture.browser(Role.TECHNICIAN, null);
        Response opened = browser.post(
                "/claims/new?device=" + place.deviceId(),
                "/claims",
                java.util.Map.of("device", String.valueOf(place.deviceId()), "fault", "Dead & <gone>"));
        assertThat(opened.statusCode()).isEqualTo(303);
        String claim = opened.header("Location").replaceAll(".*/claims/", "/claims/");
        byte[] pdf = browser.get(claim + "/sheet.pdf").asByteArray();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            String text = new PDFTextStripper().getText(document);
            assertThat(text).contains(old, "Dead & <gone>", "Working at height", "licensed electrician");
            assertThat(text).doesNotContain("EUR");
        }
        assertThat(browser.get("/claims.csv").asString()).contains(old);
        Response again = browser.post(
                claim, "/claims", java.util.Map.of("device", String.valueOf(place.deviceId()), "fault", "Again"));
        assertThat(again.statusCode()).isEqualTo(422);
        assertThat(again.asString()).contains("not closed yet");
        Response illegal = browser.post(claim, claim + "/move", java.util.Map.of("state", "replaced"));
        assertThat(illegal.statusCode()).isEqualTo(422);
        assertThat(illegal.asString()).contains("a claim that is opened cannot become replaced");
    }

    @Test
    void whoIsSecondSeesTheFormAgainAndWhy() {
        Browser browser = fixture.browser(Role.TECHNICIAN, null);
        String form = "/devices/" + place.deviceId() + "/replace";
        assertThat(browser.post(form, form, java.util.Map.of("serial", fresh, "old", "SCRAPPED"))
                        .statusCode())
                .isEqualTo(303);
        Response second = browser.post(form, form, java.util.Map.of("serial", fresh + "-2", "old", "SCRAPPED"));
        assertThat(second.statusCode()).isEqualTo(409);
        assertThat(second.asString())
                .contains("announced here already, serial number " + fresh + ":")
                .contains("value=\"" + fresh + "-2\"");
        Response moved = browser.post(
                "/spares/new", "/spares", java.util.Map.of("serial", fresh + "-3", "where", "site-" + place.siteId()));
        String spare = moved.header("Location").replaceAll(".*/spares/", "/spares/");
        String token = browser.token(spare);
        assertThat(browser.send(spare + "/away", token, java.util.Map.of("why", "sold"))
                        .statusCode())
                .isEqualTo(303);
        Response again = browser.send(spare + "/away", token, java.util.Map.of("why", "lost"));
        assertThat(again.statusCode()).isEqualTo(409);
        assertThat(again.asString())
                .contains("this spare lies in store no more")
                .contains("sold");
    }

    @Test
    void anAlarmLeadsToAClaimAndAViewerSeesNothingOfUnits() {
        AlarmHouse.House house = houses.house("Brackwater");
        long alarm = houses.portOff(house, 0, 3);
        Browser technician = fixture.browser(Role.TECHNICIAN, null);
        assertThat(technician.get("/triage/alarms/" + alarm).asString()).contains("/claims/new?alarm=" + alarm);
        assertThat(technician.get("/alarms/" + alarm).asString()).contains("/claims/new?alarm=" + alarm);
        String form = technician.get("/claims/new?alarm=" + alarm).asString();
        assertThat(form)
                .contains("Does not answer. Has not answered for 3 rounds.")
                .contains("The device has told none");
        Browser viewer = fixture.browser(Role.VIEWER, place.customerId());
        assertThat(viewer.get("/devices/" + place.deviceId()).asString()).doesNotContain("Unit in this place");
        assertThat(viewer.get("/claims").statusCode()).isEqualTo(403);
        assertThat(viewer.get("/claims/new?device=" + place.deviceId()).statusCode())
                .isEqualTo(403);
        houses.over(alarm);
    }

    /** Whoever is second reads why, and stays where the work goes on. */
    @Test
    void whatSomebodyElseWithdrewIsToldSo() {
        Browser second = fixture.browser(Role.TECHNICIAN, null);
        for (String act : List.of("withdraw", "accept")) {
            Response told = second.post(
                    "/devices/" + place.deviceId(), "/devices/" + place.deviceId() + "/replacement/" + act, Map.of());
            assertThat(told.statusCode()).isEqualTo(409);
            assertThat(told.asString()).contains("Not done: no replacement is announced here now: somebody withdrew");
        }
    }
}
