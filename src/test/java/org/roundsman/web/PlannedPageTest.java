package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.people.Role;
import org.roundsman.planned.PlanDraft;
import org.roundsman.planned.PlannedWork;
import org.roundsman.planned.Planning;
import org.roundsman.planned.Reach;
import org.roundsman.planned.Stretch;
import org.roundsman.planned.Timing;

/** Planned work as people use it, in a real browser. */
@QuarkusTest
class PlannedPageTest {

    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
    private static final CustomerScope ALL = CustomerScope.everyone();

    @TestHTTPResource("/")
    String address;

    @Inject
    FleetFixture fixture;

    @Inject
    Planning planning;

    @Inject
    PlannedWork work;

    @Inject
    Clock clock;

    private FleetFixture.Place place;
    private String technician;

    @BeforeEach
    void aPlace() {
        place = fixture.place("Saltmarsh");
        technician = fixture.person(Role.TECHNICIAN, null);
    }

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    private static void tap(Page page, AriaRole role, String name) {
        page.getByRole(role, new Page.GetByRoleOptions().setName(name).setExact(true))
                .first()
                .click();
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void twoTapsStartItAndOneEndsIt(int width) {
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            page.navigate(address + "sites/" + place.siteId());
            screen.check("planned-site-before");
            tap(page, AriaRole.LINK, "2 h");
            screen.check("planned-question");
            tap(page, AriaRole.BUTTON, "Start now");
            assertThat(page.url()).endsWith("/sites/" + place.siteId());
            assertThat(page.locator(".working").innerText())
                    .contains("Planned work: Work on site.")
                    .contains("Europe/Berlin")
                    .contains("counts for nobody");
            assertThat(work.covers(place.siteId(), java.util.OptionalLong.of(place.deviceId()), clock.instant()))
                    .isTrue();
            screen.check("planned-site");
            page.navigate(address + "devices/" + place.deviceId());
            assertThat(page.locator(".working").innerText()).contains("It is planned for Pier of");
            assertThat(page.locator(".working button").count())
                    .as("what is planned for the whole site is ended there")
                    .isZero();
            screen.check("planned-device");
            page.navigate(address + "sites/" + place.siteId());
            tap(page, AriaRole.BUTTON, "End now");
            assertThat(page.locator(".working").count()).isZero();
            assertThat(page.getByText("Start planned work for").count()).isEqualTo(1);
            tap(page, AriaRole.LINK, "Planned work of this site");
            assertThat(page.locator("section:has(#past)").innerText())
                    .contains("Work on site")
                    .contains("ended at");
            screen.check("planned-past");
            screen.complaints();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void theFormShowsTheNextTimesAndMarksTheTurnOfTheClock(int width) {
        Instant turn = BERLIN.getRules().nextTransition(clock.instant()).getInstant();
        LocalDate day = turn.atZone(BERLIN).toLocalDate();
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            page.navigate(address + "planned/new?of=site-" + place.siteId());
            assertThat(page.locator("#preview h2").innerText()).isEqualTo("The next times");
            screen.check("planned-form-once");
            page.fill("#title", "Updates at night");
            page.selectOption("#repeats", "daily");
            page.fill("#start", "02:30");
            page.fill("#firstDay", day.toString());
            page.waitForCondition(() -> page.locator("#preview").innerText().contains("The clock is turned"));
            assertThat(page.locator("#preview li").count()).isEqualTo(5);
            assertThat(page.locator("#from").isVisible()).isFalse();
            screen.check("planned-form-daily");
            page.selectOption("#repeats", "weekly");
            tap(page, AriaRole.BUTTON, "Save");
            assertThat(page.locator("main").innerText()).contains("choose at least one weekday");
            page.getByLabel("Sunday").first().check();
            screen.check("planned-form-weekly");
            tap(page, AriaRole.BUTTON, "Save");
            assertThat(page.locator("main").innerText())
                    .contains("Updates at night")
                    .contains("every Sun at 02:30 for 2 h")
                    .contains("The clock is turned");
            screen.check("planned-one");
            changeAndCancel(screen);
            screen.complaints("422");
        }
    }

    private void changeAndCancel(Screen screen) {
        Page page = screen.page();
        tap(page, AriaRole.LINK, "Change");
        page.selectOption("#repeats", "month-weekday");
        page.selectOption("#which", "-1");
        tap(page, AriaRole.BUTTON, "Save");
        assertThat(page.locator("main").innerText()).contains("the last Sunday of every month at 02:30");
        page.navigate(address + "planned");
        screen.check("planned-lists");
        page.navigate(address + "sites/" + place.siteId() + "/planned");
        tap(page, AriaRole.LINK, "Updates at night");
        tap(page, AriaRole.BUTTON, "Cancel all that is to come");
        assertThat(page.locator("main").innerText()).contains("cancelled by " + technician);
    }

    @Test
    void itWorksWithoutScripts() {
        try (Screen screen = Screen.withoutScripts(address, 390)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            page.navigate(address + "planned/new?of=device-" + place.deviceId());
            page.fill("#title", "Swap of the unit");
            tap(page, AriaRole.BUTTON, "Show the next times");
            assertThat(page.locator("#preview li").count()).isEqualTo(1);
            assertThat(page.inputValue("#title")).isEqualTo("Swap of the unit");
            tap(page, AriaRole.BUTTON, "Save");
            assertThat(page.locator("main").innerText())
                    .contains("Swap of the unit")
                    .contains("to come");
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = Role.class,
            names = {"ACCOUNT_MANAGER", "VIEWER"})
    void othersSeeItAndChangeNothing(Role role) {
        FleetFixture.Place elsewhere = fixture.place("Brackwater");
        plan(elsewhere, "Foreign work", 0, 1);
        plan(place, "Work on site", 0, 1);
        Browser browser = fixture.browser(role, role == Role.VIEWER ? place.customerId() : null);
        String site = browser.get("/sites/" + place.siteId()).asString();
        assertThat(site)
                .contains("Planned work: Work on site.")
                .doesNotContain("End now")
                .doesNotContain("/planned/start");
        String list = browser.get("/planned").asString();
        assertThat(list).contains("Work on site").doesNotContain("End now").doesNotContain("Plan work</a>");
        if (role == Role.VIEWER) {
            assertThat(list).doesNotContain("Foreign work");
            assertThat(browser.get("/sites/" + elsewhere.siteId() + "/planned").statusCode())
                    .isEqualTo(404);
        }
        for (String path : new String[] {"/planned", "/sites/" + place.siteId() + "/planned/start"}) {
            assertThat(browser.post("/password", path, Map.of("hours", "1")).statusCode())
                    .as(path)
                    .isEqualTo(403);
        }
    }

    @Test
    void thePastComesInPages() {
        for (int i = 1; i <= 21; i++) {
            plan(place, "Work " + i, -i - 1, -i);
        }
        Browser browser = fixture.browser(Role.TECHNICIAN, null);
        String at = "/sites/" + place.siteId() + "/planned";
        assertThat(browser.get(at).asString())
                .contains("Page 1 of 2")
                .contains("Work 20")
                .doesNotContain("Work 21<");
        assertThat(browser.get(at + "?page=2").asString())
                .contains("Page 2 of 2")
                .contains("Work 21<");
    }

    private void plan(FleetFixture.Place where, String title, int fromHours, int toHours) {
        Instant now = clock.instant();
        planning.add(
                ALL,
                new PlanDraft(
                        new PlanDraft.Where(Reach.SITE, where.siteId()),
                        title,
                        "",
                        new Timing.Once(new Stretch(
                                now.plus(Duration.ofHours(fromHours)), now.plus(Duration.ofHours(toHours))))));
    }
}
