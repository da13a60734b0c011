package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmDesk;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.Impact;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.alarms.Verdict;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.people.Role;

/** A technician looks at alarms and deals with them, in a real browser. */
@QuarkusTest
class AlarmsPageTest {

    private static final Instant NOW = Instant.now().truncatedTo(ChronoUnit.SECONDS);

    @TestHTTPResource("/")
    String address;

    @Inject
    FleetFixture fixture;

    @Inject
    AlarmDesk desk;

    @Inject
    AlarmBook book;

    private FleetFixture.Place place;
    private AlarmKey uplink;
    private long id;
    private String technician;

    /** An uplink that is lost for the second time, with an access point behind it and a radio that is busy. */
    @BeforeEach
    void alarms() {
        place = fixture.place("Saltmarsh");
        technician = fixture.person(Role.TECHNICIAN, null);
        uplink = AlarmKey.of(AlarmType.UPLINK_LOST, Resource.site(place.siteId()));
        AlarmKey silent = AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(place.deviceId()));
        AlarmKey busy = AlarmKey.of(AlarmType.UTILISATION_HIGH, Resource.radio(place.deviceId(), 2));
        desk.accept(List.of(
                raise(uplink, Severity.CRITICAL, 300, "Nothing at the site has answered since 10:41."),
                new Signal.Clear(uplink, before(280), "Answers again after 20 min. 14 people went without Wi-Fi."),
                raise(busy, Severity.WARNING, 200, "Utilisation has been 56 % for 15 min."),
                raise(busy, Severity.MINOR, 150, "Utilisation has been 73 % for 15 min.")));
        desk.accept(
                List.of(
                        raise(uplink, Severity.CRITICAL, 12, "Nothing at the site has answered since 12:04."),
                        raise(silent, Severity.MAJOR, 12, "Silent for 12 min.")),
                List.of(verdict(uplink, null, Set.of(place.deviceId())), verdict(silent, uplink, Set.of())));
        id = book.active().get(uplink).id();
    }

    private static Instant before(int minutes) {
        return NOW.minus(Duration.ofMinutes(minutes));
    }

    private static Signal raise(AlarmKey key, Severity severity, int minutesAgo, String text) {
        return new Signal.Raise(key, severity, before(minutesAgo + 1), before(minutesAgo), text);
    }

    private static Verdict verdict(AlarmKey key, AlarmKey by, Set<Long> affected) {
        return new Verdict(
                key,
                CauseKind.UPLINK_LOST,
                Optional.ofNullable(by),
                List.of(
                        "The gateway last answered at 12:03:12.",
                        "1 of 1 access points is silent since.",
                        "Other sites answer, so it is not our own connection."),
                new Impact(OptionalInt.of(4), OptionalInt.of(31), OptionalInt.of(0), 1, true),
                affected,
                true);
    }

    @AfterAll
    static void closeScreens() {
        Screen.closeAll();
    }

    private static void press(Page page, String name) {
        page.getByRole(
                        AriaRole.BUTTON,
                        new Page.GetByRoleOptions().setName(name).setExact(true))
                .click();
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void anAlarmIsReadTakenNotedShelvedAndClosed(int width) {
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            page.navigate(address + "alarms/" + id);
            assertThat(page.locator("main").innerText())
                    .contains("critical", "Cause: uplink or gateway lost", "The gateway last answered at 12:03:12.")
                    .contains("about 31", "Alarms that it explains", "Answers again after 20 min.");
            screen.check("alarm");
            press(page, "Take it");
            assertThat(page.locator(".alarm-line").innerText()).contains("taken by " + technician);
            page.fill("#note", "Called the harbour office.");
            press(page, "Add the note");
            assertThat(page.locator("#past + table").innerText()).contains("Called the harbour office.");
            page.locator("details summary").getByText("Put it on the shelf").click();
            press(page, "Shelve");
            assertThat(page.locator("#reason-wrong").innerText()).contains("say why");
            screen.check("alarm-fault");
            page.fill("#reason", "Carrier works on it");
            press(page, "Shelve");
            assertThat(page.locator(".alarm-line").innerText()).contains("shelved until", "Carrier works on it");
            screen.check("alarm-shelved");
            press(page, "Take off the shelf");
            page.fill("#note", "Known to the customer.");
            press(page, "Close, with this note");
            assertThat(page.locator(".alarm-line").innerText()).contains("active for", "closed by " + technician);
            screen.complaints("422");
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void alarmsAreFoundByWordsAndStandOnTheirPages(int width) {
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            page.navigate(address + "alarms");
            page.fill("#text", place.customer() + " utilisation");
            press(page, "Show");
            assertThat(page.locator(".alarm-table tbody tr").count()).isEqualTo(1);
            assertThat(page.locator(".alarm-table").innerText()).contains("minor", "73 %");
            page.navigate(address + "alarms?customer=" + place.customerId());
            assertThat(page.locator(".alarm-table tbody tr").count()).isEqualTo(4);
            assertThat(page.locator(".alarm-table").innerText())
                    .contains("About 35 people would be online now, 1 access point affected")
                    .contains("fault since ", "lasted 21 min");
            screen.check("alarms");
            page.navigate(address + "sites/" + place.siteId());
            assertThat(page.locator(".open-alarms li").count()).isEqualTo(3);
            screen.check("site-alarms");
            page.navigate(address + "devices/" + place.deviceId());
            assertThat(page.locator(".open-alarms li").count()).isEqualTo(2);
            screen.check("device-alarms");
            page.navigate(address + "alarms/types");
            assertThat(page.locator("#device-silent").innerText()).contains("communications");
            screen.check("alarm-types");
            screen.complaints();
        }
    }

    /** The only way to it: on a phone it is not left out. */
    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void thePasswordAndTokensAreReachedFromEveryPage(int width) {
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            page.navigate(address + "alarms/types");
            assertThat(page.locator(".me .who").boundingBox().x).isGreaterThanOrEqualTo(0);
            page.locator(".me .who").click();
            page.waitForURL("**/password");
            screen.check("password");
            screen.complaints();
        }
    }

    @Test
    void ofWhatIsOverNothingIsOfferedButANote() {
        desk.accept(List.of(new Signal.Clear(uplink, NOW, "Answers again.")));
        org.roundsman.web.Browser browser = fixture.browser(Role.TECHNICIAN, null);
        String at = "/alarms/" + id;
        assertThat(browser.get(at).asString())
                .contains("It is over, so that there is nothing left to take", "Add the note")
                .contains("Clients that would have been online")
                .doesNotContain("What to do</h3>", "It stays active until")
                .doesNotContain(at + "/take", at + "/acknowledge", at + "/close", at + "/shelve");
        for (String act : List.of("take", "acknowledge", "close", "shelve")) {
            io.restassured.response.Response refused =
                    browser.post("/password", at + "/" + act, Map.of("reason", "later", "hours", "1"));
            assertThat(refused.statusCode()).as(act).isEqualTo(422);
            assertThat(refused.asString()).as(act).contains("it is cleared: the fault is gone");
        }
        assertThat(browser.post("/password", at + "/note", Map.of("text", "It was the cleaner."))
                        .statusCode())
                .isEqualTo(303);
    }

    @Test
    void whatIsAskedForAndCannotBeReadIsSaid() {
        org.roundsman.web.Browser browser = fixture.browser(Role.TECHNICIAN, null);
        assertThat(browser.get("/alarms?text=_&from=yesterday").asString())
                .contains("Left out, because it cannot be read: the words, which are signs alone;"
                        + " the time from which it was active.");
        assertThat(browser.get("/alarms?text=pier").asString()).doesNotContain("Left out, because");
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void theQualityOfAlarmsIsShownBesideTheGuide(int width) {
        AlarmKey key = AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(place.deviceId()));
        List<Signal> chatter = new ArrayList<>(List.of(new Signal.Clear(key, before(11), "Answers.")));
        for (int n = 0; n < 12; n++) {
            Instant at = before(10).plusSeconds(n * 15L);
            chatter.add(new Signal.Raise(key, Severity.MAJOR, at, at, "Silent."));
            chatter.add(new Signal.Clear(key, at.plusSeconds(5), "Answers."));
        }
        desk.accept(chatter);
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            page.navigate(address + "alarms/quality?technicians=1");
            assertThat(page.locator("main").innerText())
                    .contains("from memory", "within the guide", "over the limit", "Pier AP of " + place.customer());
            screen.check("alarm-quality");
            page.navigate(address + "alarms/quality?days=90&technicians=3");
            assertThat(page.locator("#load").innerText()).contains("in 90 days, for 3 technicians");
            screen.complaints();
        }
    }

    @Test
    void viewersSeeTheirOwnAlarmsAndAccountManagersAllButNeitherActs() {
        org.roundsman.web.Browser viewer = fixture.browser(Role.VIEWER, place.customerId());
        assertThat(viewer.get("/alarms/" + id).asString())
                .contains("The gateway last answered")
                .doesNotContain("Take it");
        assertThat(viewer.get("/alarms").asString())
                .contains("Nothing at the site")
                .doesNotContain("/alarms/quality");
        org.roundsman.web.Browser manager = fixture.browser(Role.ACCOUNT_MANAGER, null);
        assertThat(manager.get("/alarms/" + id).asString()).doesNotContain("Take it");
        for (org.roundsman.web.Browser browser : List.of(viewer, manager)) {
            assertThat(browser.post("/password", "/alarms/" + id + "/take", Map.of())
                            .statusCode())
                    .isEqualTo(403);
        }
        org.roundsman.web.Browser other =
                fixture.browser(Role.VIEWER, fixture.place("Quillfeather").customerId());
        assertThat(other.get("/alarms/" + id).statusCode()).isEqualTo(404);
        assertThat(other.get("/alarms").asString()).doesNotContain(place.customer());
        assertThat(book.find(CustomerScope.everyone(), id).orElseThrow().takenBy())
                .isEmpty();
    }
}
