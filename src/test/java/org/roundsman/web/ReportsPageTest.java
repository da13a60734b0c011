package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.YearMonth;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.dispatch.ReportState;
import org.roundsman.people.Role;

/** Reports in a real browser: the month's desk, the review by keyboard, and what a customer sees. */
@QuarkusTest
class ReportsPageTest {

    private static final int DESK = 1280;
    private static final int PHONE = 390;

    /** Each test has a month of its own, so that the reports of no other lie in it. */
    private static final AtomicInteger BACK = new AtomicInteger(12);

    @TestHTTPResource("/")
    String address;

    @Inject
    FleetFixture fixture;

    @Inject
    ReportsFixture reports;

    private YearMonth month;
    private FleetFixture.Place place;
    private String manager;

    @BeforeEach
    void aMonth() {
        month = reports.lastMonth().minusMonths(BACK.incrementAndGet());
        place = fixture.place("Brackwater");
        manager = fixture.person(Role.ACCOUNT_MANAGER, null);
    }

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    private Page open(Screen screen, String path) {
        screen.signIn(manager, FleetFixture.PASSWORD);
        screen.page().navigate(address + path);
        return screen.page();
    }

    private long toReview(String customer) {
        return reports.kept(fixture.place(customer), month, 1, ReportState.TO_REVIEW, "");
    }

    private static Object focused(Page page) {
        return page.evaluate("document.activeElement.id");
    }

    @ParameterizedTest
    @ValueSource(ints = {DESK, PHONE})
    void theDeskFollowsWhatIsBeingBuilt(int width) {
        long waiting = reports.kept(place, month, 1, ReportState.WAITING, "");
        try (Screen screen = Screen.open(address, width)) {
            Page page = open(screen, "reports?state=waiting&month=" + month);
            assertThat(page.locator("#desk-live").innerText()).contains(place.customer(), "waiting");
            screen.check("reports-desk");
            reports.built(waiting, place);
            page.waitForCondition(() -> page.locator("#desk-live").innerText().contains("To review (1)"));
            page.waitForCondition(() -> page.locator("#review-next").count() == 1);
            assertThat(page.locator("#bar-built").getAttribute("value")).isEqualTo("1");
            page.locator("#review-next").click();
            page.waitForURL("**/reports/" + waiting);
            screen.complaints();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {DESK, PHONE})
    void aReportIsReadOverAtBothWidths(int width) {
        long report = reports.kept(place, month, 1, ReportState.TO_REVIEW, "Thank you for the new line.");
        try (Screen screen = Screen.open(address, width)) {
            Page page = open(screen, "reports/" + report);
            assertThat(page.locator("h1").innerText()).contains(place.customer());
            assertThat(page.locator("article.report h2").count()).isGreaterThan(5);
            assertThat(page.inputValue("#remark")).isEqualTo("Thank you for the new line.");
            screen.check("report-review");
            page.locator(".report-summary a").first().click();
            String anchor = page.url().substring(page.url().indexOf('#') + 1);
            assertThat(page.locator("article.report #" + anchor).count())
                    .as("the sentence leads to its figures")
                    .isEqualTo(1);
            screen.complaints();
        }
    }

    @Test
    void theKeyboardGoesThroughTheMonth() {
        long aspen = toReview("Aspen Yard");
        long birch = toReview("Birch Yard");
        long cedar = toReview("Cedar Yard");
        try (Screen screen = Screen.open(address, DESK)) {
            Page page = open(screen, "reports/" + aspen);
            page.keyboard().press("n");
            page.waitForURL("**/reports/" + birch);
            page.keyboard().press("p");
            page.waitForURL("**/reports/" + aspen);
            page.keyboard().press("r");
            assertThat(focused(page)).isEqualTo("remark");
            page.keyboard().type("panr?");
            assertThat(page.inputValue("#remark")).as("not while typing").isEqualTo("panr?");
            assertThat(page.url()).endsWith("/reports/" + aspen);
            page.locator("#keep-look").focus();
            page.keyboard().press("a");
            page.waitForURL("**/reports/" + birch);
            page.keyboard().press("a");
            page.waitForURL("**/reports/" + cedar);
            page.keyboard().press("a");
            page.waitForURL("**/reports?month=" + month);
            assertThat(page.locator("#desk-live").innerText()).contains("Reviewed (3)");
            page.navigate(address + "reports/" + aspen);
            assertThat(page.locator("article.report").innerText())
                    .as("the remark went along")
                    .contains("panr?");
            screen.complaints();
        }
    }

    /** WCAG 2.2, 2.1.4: single keys can be switched off. */
    @Test
    void keysAreListedAndCanBeSwitchedOff() {
        long first = toReview("Aspen Yard");
        toReview("Birch Yard");
        try (Screen screen = Screen.open(address, DESK)) {
            Page page = open(screen, "reports/" + first);
            page.keyboard().press("?");
            assertThat(page.locator("#keys dl").isVisible()).isTrue();
            screen.check("report-keys");
            page.uncheck("#keys-on");
            page.locator("#go-next").focus();
            page.keyboard().press("a");
            page.keyboard().press("n");
            page.reload();
            page.keyboard().press("a");
            page.keyboard().press("r");
            assertThat(page.url()).endsWith("/reports/" + first);
            assertThat(focused(page)).isNotEqualTo("remark");
            assertThat(page.locator(".head .report-state").first().innerText()).isEqualTo("to review");
            screen.complaints();
        }
    }

    @Test
    void aRemarkThatWasBegunIsNotLost() {
        long first = toReview("Aspen Yard");
        long second = toReview("Birch Yard");
        try (Screen screen = Screen.open(address, DESK)) {
            Page page = open(screen, "reports/" + first);
            page.fill("#remark", "Half a thou");
            page.locator("#go-next").click();
            page.waitForURL("**/reports/" + second);
            assertThat(page.inputValue("#remark")).isEmpty();
            page.locator("#go-previous").click();
            page.waitForURL("**/reports/" + first);
            assertThat(page.inputValue("#remark")).isEqualTo("Half a thou");
            page.locator("#keep-remark").click();
            page.waitForCondition(
                    () -> "Half a thou".equals(page.locator("input[name=was]").getAttribute("value")));
            page.reload();
            assertThat(page.inputValue("#remark")).isEqualTo("Half a thou");
            screen.complaints();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {DESK, PHONE})
    void whatWasSentShowsItsMailsAndLinks(int width) {
        long sent = reports.kept(place, month, 1, ReportState.SENT, "");
        reports.mail(sent, "office@brook.example", "SENT", "");
        reports.mail(sent, "gone@brook.example", "FAILED", "No such mailbox");
        try (Screen screen = Screen.open(address, width)) {
            Page page = open(screen, "reports/" + sent);
            assertThat(page.locator("section:has(#mails)").innerText())
                    .contains("office@brook.example", "failed", "No such mailbox");
            page.locator("#make-link").click();
            assertThat(page.locator("#once").innerText()).contains("/report-link/");
            screen.check("report-link-made");
            page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Back to the report"))
                    .click();
            assertThat(page.locator("section:has(#links)").innerText()).contains("never", "Take back");
            screen.check("report-sent");
            screen.complaints();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {DESK, PHONE})
    void aCustomerFindsTheirReports(int width) {
        long sent = reports.kept(place, month, 1, ReportState.SENT, "");
        String viewer = fixture.person(Role.VIEWER, place.customerId());
        try (Screen screen = Screen.open(address, width)) {
            screen.signIn(viewer, FleetFixture.PASSWORD);
            Page page = screen.page();
            page.getByRole(
                            AriaRole.LINK,
                            new Page.GetByRoleOptions().setName("Reports").setExact(true))
                    .first()
                    .click();
            screen.check("reports-own");
            page.locator("tbody a[href='/reports/" + sent + "']").click();
            assertThat(page.locator("article.report h2").count()).isGreaterThan(5);
            assertThat(page.locator("#review-title").count()).isZero();
            screen.check("report-own");
            screen.complaints();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {DESK, PHONE})
    void plansLooksAndTheArchiveAreKept(int width) {
        reports.kept(place, month, 1, ReportState.SENT, "");
        try (Screen screen = Screen.open(address, width)) {
            Page page = open(screen, "reports/plans/" + place.customerId());
            screen.check("report-plan");
            page.fill("#recipients", "office@brook.example");
            page.fill("#day", "2");
            page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Save"))
                    .click();
            page.waitForURL("**/reports/plans");
            assertThat(page.locator("tbody").innerText()).contains("office@brook.example");
            page.navigate(address + "reports/look/" + place.customerId());
            screen.check("report-look");
            page.navigate(address + "reports/archive?customer=" + place.customerId());
            assertThat(page.locator("section:has(#found)").innerText()).contains("1 report", place.customer());
            screen.check("reports-archive");
            page.navigate(address + "report-link/nothing");
            assertThat(page.locator("h1").innerText()).isEqualTo("This link opens nothing");
            screen.check("report-link-not");
            screen.complaints("404");
        }
    }

    @Test
    void everythingButTheLivePartsWorksWithoutScripts() {
        long report = reports.kept(place, month, 1, ReportState.WAITING, "");
        try (Screen screen = Screen.withoutScripts(address, DESK)) {
            Page page = open(screen, "reports/" + report);
            assertThat(page.locator("#working").innerText()).contains("waiting");
            reports.built(report, place);
            screen.reloadUntil("#approve-next");
            page.fill("#remark", "Read from here");
            page.locator("#approve").click();
            assertThat(page.locator("#reopen").count()).isEqualTo(1);
            assertThat(page.locator("article.report").innerText()).contains("Read from here");
            page.navigate(address + "reports?month=" + month);
            assertThat(page.locator("#desk-live").innerText()).contains("Reviewed (1)");
        }
    }
}
