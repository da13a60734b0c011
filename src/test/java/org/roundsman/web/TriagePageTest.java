package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.people.Role;

/** Triage in a real browser: by keyboard, live, on a phone, and without scripts. */
@QuarkusTest
class TriagePageTest {

    private static final int DESK = 1280;
    private static final int PHONE = 390;

    @TestHTTPResource("/")
    String address;

    @Inject
    FleetFixture fixture;

    @Inject
    AlarmHouse houses;

    private AlarmHouse.House house;
    private AlarmHouse.House other;
    private long uplink;
    private long port;
    private long busy;
    private String technician;

    @BeforeEach
    void alarms() {
        houses.clearAll();
        house = houses.house("Brackwater");
        other = houses.house("Pebblegate");
        uplink = houses.uplinkLost(house);
        port = houses.portOff(other, 1, 12);
        busy = houses.busy(other, 0);
        technician = fixture.person(Role.TECHNICIAN, null);
    }

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    private Page open(Screen screen, String path) {
        screen.signIn(technician, FleetFixture.PASSWORD);
        screen.page().navigate(address + path);
        return screen.page();
    }

    private static void until(Page page, String query, String text) {
        page.waitForCondition(() -> page.locator(query).innerText().contains(text));
    }

    private static Object focused(Page page) {
        return page.evaluate("document.activeElement.id");
    }

    @ParameterizedTest
    @ValueSource(ints = {DESK, PHONE})
    void theMostUrgentIsReadAtOnce(int width) {
        try (Screen screen = Screen.open(address, width)) {
            Page page = open(screen, "triage");
            assertThat(page.locator("#alarms > .lines .entry").count()).isEqualTo(3);
            assertThat(page.locator("#alarms .entry").first().innerText())
                    .contains("Uplink or gateway lost")
                    .contains("about 40 people");
            assertThat(page.locator("#panel").isVisible()).isEqualTo(width == DESK);
            screen.check("triage");
            page.locator("#open-" + uplink).click();
            page.waitForURL("**/triage/alarms/" + uplink);
            until(page, "#alarm-now", "3 of 3 access points are silent since.");
            assertThat(page.locator("#alarms").isVisible()).isEqualTo(width == DESK);
            page.locator("#explains summary").click();
            screen.check("triage-alarm");
            screen.complaints();
        }
    }

    @Test
    void theKeyboardGoesThroughTheListAndActs() {
        try (Screen screen = Screen.open(address, DESK)) {
            Page page = open(screen, "triage");
            page.keyboard().press("j");
            assertThat(focused(page)).isEqualTo("open-" + uplink);
            page.keyboard().press("j");
            assertThat(focused(page)).isEqualTo("open-" + port);
            page.keyboard().press("Enter");
            until(page, "#alarm-title", "Switch port delivers no power");
            page.keyboard().press("ArrowDown");
            assertThat(focused(page)).isEqualTo("open-" + busy);
            page.keyboard().press("k");
            assertThat(focused(page)).isEqualTo("open-" + port);
            page.keyboard().press("t");
            until(page, "#alarm-now", "you have it");
            until(page, "[data-alarm='" + port + "'].entry", "you have it");
            assertThat(focused(page)).isEqualTo("open-" + port);
            page.keyboard().press("n");
            assertThat(focused(page)).isEqualTo("text");
            page.keyboard().type("ajtc?");
            assertThat(page.inputValue("#text")).isEqualTo("ajtc?");
            screen.complaints();
        }
    }

    @Test
    void keysAreListedAndCanBeSwitchedOff() {
        try (Screen screen = Screen.open(address, DESK)) {
            Page page = open(screen, "triage");
            page.keyboard().press("?");
            assertThat(page.locator("#keys dl").isVisible()).isTrue();
            screen.check("triage-keys");
            page.uncheck("#keys-on");
            page.locator("#open-" + uplink).focus();
            page.keyboard().press("j");
            page.keyboard().press("a");
            assertThat(focused(page)).isEqualTo("open-" + uplink);
            page.reload();
            page.keyboard().press("j");
            assertThat(focused(page)).isNotEqualTo("open-" + uplink);
            assertThat(page.locator("#alarm-now").innerText()).contains("nobody has it yet");
            screen.complaints();
        }
    }

    @Test
    void aRefreshKeepsFocusFoldsAndWhatWasTypedAndTellsOfWhatIsNew() {
        try (Screen screen = Screen.open(address, DESK)) {
            Page page = open(screen, "triage/alarms/" + port);
            houses.over(busy);
            page.waitForCondition(() -> page.locator("#alarms > .lines .entry").count() == 2);
            assertThat(page.locator("#triage-news").textContent()).isEmpty();
            page.locator("#fold-cleared summary").click();
            page.locator("#history summary").click();
            page.fill("#text", "Half a thou");
            long fresh = houses.portOff(other, 2, 5);
            page.waitForCondition(() -> page.locator("#open-" + fresh).count() == 1);
            assertThat(page.locator("#fold-cleared").getAttribute("open")).isNotNull();
            assertThat(page.locator("#history").getAttribute("open")).isNotNull();
            assertThat(page.inputValue("#text")).isEqualTo("Half a thou");
            assertThat(focused(page)).isEqualTo("text");
            assertThat(page.locator("#triage-news").textContent()).contains("New: Switch port delivers no power, ap-3");
            assertThat(page.title()).startsWith("(3) ");
            page.locator("#open-" + uplink).click();
            until(page, "#alarm-title", "Uplink or gateway lost");
            assertThat(page.inputValue("#text")).isEmpty();
            page.locator("#open-" + port).click();
            until(page, "#alarm-title", "Switch port delivers no power");
            page.waitForCondition(() -> page.inputValue("#text").equals("Half a thou"));
            page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Note n"))
                    .click();
            page.locator("#history summary").click();
            until(page, "#history", "Half a thou");
            assertThat(page.inputValue("#text")).isEmpty();
            screen.complaints();
        }
    }

    /** Of what happens to be in the air when somebody presses, the press must not be lost. */
    @Test
    void aListThatComesWhileALineIsPressedWaits() {
        try (Screen screen = Screen.open(address, DESK)) {
            Page page = open(screen, "triage/alarms/" + port);
            page.locator("#open-" + uplink).hover();
            page.mouse().down();
            long[] fresh = new long[1];
            page.waitForResponse(
                    answer -> answer.url().contains("/triage/list") && answer.status() == 200,
                    () -> fresh[0] = houses.portOff(other, 2, 5));
            assertThat(page.locator("#open-" + fresh[0]).count()).isZero();
            page.mouse().up();
            until(page, "#alarm-title", "Uplink or gateway lost");
            page.waitForCondition(() -> page.locator("#open-" + fresh[0]).count() == 1);
            screen.complaints();
        }
    }

    @Test
    void onAPhoneTheActsAreAtTheThumb() {
        try (Screen screen = Screen.open(address, PHONE)) {
            Page page = open(screen, "triage/alarms/" + port);
            Locator take = page.locator("#now-take-" + port);
            assertThat(take.boundingBox().y).isGreaterThan(600);
            assertThat(take.boundingBox().height).isGreaterThanOrEqualTo(44);
            take.click();
            until(page, "#alarm-now", "you have it");
            page.selectOption("#length", "PT4H");
            page.fill("#reason", "Part is ordered");
            page.getByRole(
                            AriaRole.BUTTON,
                            new Page.GetByRoleOptions().setName("Shelve").setExact(false))
                    .first()
                    .click();
            until(page, "#alarm-now", "shelved until");
            screen.check("triage-shelved");
            page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("All alarms"))
                    .click();
            assertThat(page.locator("#fold-shelved summary").innerText()).contains("Shelved (1)");
            screen.complaints();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {DESK, PHONE})
    void theVisitSheetIsReadAndPrinted(int width) {
        try (Screen screen = Screen.open(address, width)) {
            Page page = open(screen, "triage/alarms/" + port);
            page.locator("#now-visit").click();
            assertThat(page.locator(".visit").innerText())
                    .contains("3 Lantern Street")
                    .contains("Spare: one Tamarack Radio TR-22H.");
            screen.check("visit");
            assertThat(page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("To print (PDF)"))
                            .getAttribute("href"))
                    .isEqualTo("/triage/visit/" + port + "/sheet.pdf");
            screen.complaints();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {DESK, PHONE})
    void whenNothingNeedsAnybodyThePageSaysSo(int width) {
        houses.clearAll();
        try (Screen screen = Screen.open(address, width)) {
            Page page = open(screen, "triage");
            assertThat(page.locator("#alarms").innerText())
                    .contains("Nothing needs you.")
                    .contains("answering");
            screen.check("triage-empty");
            screen.complaints();
        }
    }

    @Test
    void everythingButTheLivePartsWorksWithoutScripts() {
        try (Screen screen = Screen.withoutScripts(address, DESK)) {
            Page page = open(screen, "triage");
            page.locator("#open-" + port).click();
            page.locator("#now-ack-" + port).click();
            assertThat(page.locator("#alarm-now").innerText()).contains("acknowledged by " + technician);
            page.fill("#text", "Seen from here");
            page.locator("#close-alarm").click();
            assertThat(page.locator("#alarm-now").innerText()).contains("closed by " + technician);
            assertThat(page.locator("#open-" + port).count()).isZero();
        }
    }
}
