package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.fleet.CredentialDraft;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.people.Role;
import org.roundsman.profiles.ProfilesInUse;
import org.roundsman.profiles.StoredWalks;
import org.roundsman.profiles.WrittenProfiles;
import org.roundsman.snmp.Snmpd;

/** A device that no shipped profile knows gets a profile, in a real browser, on a desk and on a ladder. */
@QuarkusTest
class WorkbenchPageTest {

    private static final String WALK = """
        .1.3.6.1.2.1.1.2.0 = OID: .1.3.6.1.4.1.32473.78.1
        .1.3.6.1.2.1.1.3.0 = Timeticks: (360000) 1:00:00.00
        .1.3.6.1.2.1.1.5.0 = STRING: "loft-ap"
        .1.3.6.1.4.1.32473.78.2.1.0 = STRING: "GX-0042"
        .1.3.6.1.4.1.32473.78.5.1.2.1 = STRING: "2.4 GHz"
        .1.3.6.1.4.1.32473.78.5.1.2.2 = STRING: "5 GHz"
        .1.3.6.1.4.1.32473.78.5.1.3.1 = Gauge32: 51
        .1.3.6.1.4.1.32473.78.5.1.3.2 = Gauge32: 102
        """;

    @TestHTTPResource("/")
    String address;

    @Inject
    FleetFixture fixture;

    @Inject
    WrittenProfiles written;

    @Inject
    ProfilesInUse inUse;

    @Inject
    StoredWalks walks;

    @AfterEach
    void nothingStays() {
        written.all().forEach(profile -> written.takeOut(profile.id()));
        walks.all(CustomerScope.everyone()).forEach(walks::remove);
    }

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    private static void press(Page page, String button) {
        page.getByRole(
                        AriaRole.BUTTON,
                        new Page.GetByRoleOptions().setName(button).setExact(true))
                .click();
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void fromAPastedWalkToAProfileInUse(int width) {
        String technician = fixture.person(Role.TECHNICIAN, null);
        String name = "loft-" + width + "-" + System.nanoTime();
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            page.navigate(address + "profiles");
            screen.check("profiles");
            page.navigate(address + "profiles/workbench");
            screen.check("workbench");
            page.fill("#name", "Loft walk");
            page.fill("#text", WALK);
            press(page, "Put it on the bench");
            page.waitForURL("**/profiles/walks/*");
            screen.check("walk");
            assertThat(page.locator("main").innerText())
                    .contains("host applies")
                    .contains("1.3.6.1.4.1.32473.78.5.1")
                    .contains("blanked out");
            write(screen, name);
            press(page, "Save");
            page.waitForURL("**/versions/1");
            assertThat(inUse.current().names()).doesNotContain(name);
            screen.check("profile-version");
            press(page, "Put version 1 in use");
            page.waitForURL(url -> url.matches(".*/profiles/\\d+"));
            assertThat(inUse.current().names()).contains(name);
            assertThat(page.locator("main").innerText()).contains("version 1 is in use");
            screen.check("profile");
            changedAndComparedWithTheVersionBefore(screen);
            screen.complaints();
        }
    }

    private static void changedAndComparedWithTheVersionBefore(Screen screen) {
        Page page = screen.page();
        page.locator(".acts a", new Page.LocatorOptions().setHasText("Change"))
                .first()
                .click();
        page.fill(
                "#text",
                page.inputValue("#text")
                        .replace("One line that says what kind of device this is", "units under the roof"));
        page.fill("#note", "Say what they are");
        press(page, "Save");
        page.waitForURL("**/versions/2");
        screen.check("profile-version-2");
        page.locator(".trail a").last().click();
        screen.check("profile-versions");
        page.locator("a", new Page.LocatorOptions().setHasText("What changed"))
                .first()
                .click();
        assertThat(page.locator(".diff").innerText()).contains("units under the roof");
        screen.check("profile-differences");
        page.locator(".trail a").first().click();
        screen.check("profiles-written");
        page.locator("a", new Page.LocatorOptions().setHasText("wlan-ieee"))
                .first()
                .click();
        screen.check("profile-shipped");
    }

    /** From the maker's table to a text that was tried. */
    private static void write(Screen screen, String name) {
        Page page = screen.page();
        page.getByText("Write lines for it: 1.3.6.1.4.1.32473.78.5.1").click();
        page.locator("select[name=key]").nth(0).selectOption("radio.label");
        page.locator("select[name=key]").nth(1).selectOption("radio.utilisation");
        page.locator("select[name=as]").nth(1).selectOption("bss-load");
        screen.check("propose");
        press(page, "Open the editor with these lines");
        String proposed = page.inputValue("#text");
        assertThat(proposed).contains("radio.utilisation: {column: 3, as: bss-load}");
        page.fill("#text", proposed.replace("my-maker", name).replace("bss-load", "bss-laod"));
        page.waitForSelector("#checked .wrong");
        assertThat(page.locator("#checked").innerText()).contains("Line ").contains("did you mean bss-load?");
        screen.check("editor-fault");
        page.fill("#text", proposed.replace("my-maker", name));
        page.waitForSelector("#checked .good");
        press(page, "Try it");
        page.waitForSelector("#tried table");
        assertThat(page.locator("#tried").innerText())
                .contains("radio.utilisation")
                .contains("20")
                .contains("40");
        screen.check("editor-tried");
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void aDeviceIsReadInTheBackgroundAndItsWalkKept(int width, @TempDir Path folder) throws IOException {
        try (Snmpd snmpd = new Snmpd(folder).start();
                Screen screen = Screen.open(address, width)) {
            FleetFixture.Place place = fixture.place("Orrin");
            long credential = fixture.credentials()
                    .add(CredentialDraft.community(place.customerId(), "snmpd keys", 2, Snmpd.COMMUNITY))
                    .id;
            String rack = "Rack " + width;
            fixture.device(place.siteId(), credential, rack, Snmpd.HOST, snmpd.port());
            Page page = screen.page();
            screen.signIn(fixture.person(Role.OWNER, null), FleetFixture.PASSWORD);
            page.navigate(address + "profiles/workbench");
            page.fill("#search", place.customer() + " " + rack);
            press(page, "Find");
            page.waitForURL("**search=*");
            screen.check("workbench-found");
            page.getByText("Read everything of " + rack).click();
            page.waitForSelector(
                    "#readings li:has-text('" + rack + "') a", new Page.WaitForSelectorOptions().setTimeout(120_000));
            assertThat(page.locator("#kept-walks").innerText())
                    .contains("variables")
                    .doesNotContain("None yet");
            screen.check("workbench-read");
            page.locator("#readings li", new Page.LocatorOptions().setHasText(rack))
                    .locator("a")
                    .click();
            assertThat(page.locator("main").innerText())
                    .contains(place.customer())
                    .contains("fact.object_id")
                    .contains("hrSWRunEntry");
            press(page, "Make it a test case");
            assertThat(page.locator("main").innerText()).contains("make of it what is expected");
            screen.check("walk-of-snmpd");
        }
    }

    /** Without scripts the check and the trial have buttons of their own, and the second of two who save is told. */
    @Test
    void itWorksWithoutScriptsAndTellsTheSecondOfTwo() {
        String name = "shed-" + System.nanoTime();
        long id = written.add("profile: " + name + "\n", "").profileId();
        try (Screen screen = Screen.withoutScripts(address, 1280)) {
            Page page = screen.page();
            screen.signIn(fixture.person(Role.OWNER, null), FleetFixture.PASSWORD);
            page.navigate(address + "profiles/" + id + "/edit");
            page.fill("#text", "profile: " + name + "\nmore: 1\n");
            press(page, "Check");
            assertThat(page.locator("#checked").innerText()).contains("Line 2").contains("there is no such key");
            written.save(id, 1, "profile: " + name + "\nabout: theirs\n", "");
            page.fill("#text", "profile: " + name + "\nabout: mine\n");
            press(page, "Save");
            assertThat(page.locator("main").innerText()).contains("saved version 2 while you were changing");
            press(page, "Save");
            assertThat(written.version(id, 3).orElseThrow().text()).isEqualTo("profile: " + name + "\nabout: mine\n");
        }
    }

    /** Far beyond what other forms may be, and with a line that cannot be read. */
    @Test
    void aLargeFileIsTakenAndItsFaultyLinesAreListed() {
        Browser browser = fixture.browser(Role.TECHNICIAN, null);
        StringBuilder text = new StringBuilder(WALK);
        for (int i = 1; i <= 20_000; i++) {
            text.append(".1.3.6.1.4.1.32473.79.1.1.2.")
                    .append(i)
                    .append(" = Counter32: 1")
                    .append('\n');
        }
        text.append("IF-MIB::ifNumber.0 = INTEGER: 2\n");
        String token = browser.token("/profiles/workbench");
        io.restassured.response.Response answer = browser.request()
                .multiPart("anti-forgery", token)
                .multiPart("name", "Large")
                .multiPart("file", "large.txt", text.toString().getBytes(java.nio.charset.StandardCharsets.UTF_8))
                .post("/profiles/walks");
        assertThat(answer.statusCode()).isEqualTo(303);
        String page = browser.get(java.net.URI.create(answer.header("Location")).getPath())
                .asString();
        assertThat(page)
                .contains("20,008 variables")
                .contains("line 20009 could not be read: a name instead of numbers");
    }

    @Test
    void accountManagersReadAndViewersSeeNothing() {
        FleetFixture.Place place = fixture.place("Thistledown");
        Browser reader = fixture.browser(Role.ACCOUNT_MANAGER, null);
        assertThat(reader.get("/profiles").asString()).contains("wlan-ieee").doesNotContain("Write a profile");
        assertThat(reader.get("/profiles/workbench").statusCode()).isEqualTo(200);
        assertThat(reader.get("/profiles/new").statusCode()).isEqualTo(403);
        Map<String, String> fields = new TreeMap<>(Map.of("text", "profile: intruder\n", "note", ""));
        assertThat(reader.post("/password", "/profiles", fields).statusCode()).isEqualTo(403);
        assertThat(written.named("intruder")).isEmpty();
        Browser viewer = fixture.browser(Role.VIEWER, place.customerId());
        for (String path : new String[] {"/profiles", "/profiles/workbench", "/profiles/built-in/host"}) {
            assertThat(viewer.get(path).statusCode()).as(path).isEqualTo(403);
        }
    }
}
