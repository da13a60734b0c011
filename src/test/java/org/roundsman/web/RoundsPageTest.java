package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.DatagramSocket;
import java.net.InetSocketAddress;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.people.Role;
import org.roundsman.polling.ReadingSink;
import org.roundsman.readings.FleetBoard;

/** What a technician does when the phone rings, in a real browser, on a desk and on a ladder. */
@QuarkusTest
class RoundsPageTest {

    @TestHTTPResource("/")
    String address;

    @Inject
    FleetFixture fixture;

    @Inject
    ReadingSink sink;

    @Inject
    FleetBoard board;

    @Inject
    Clock clock;

    private FleetFixture.Place place;
    private String technician;

    /** Takes datagrams and never answers, as a device behind a wrong community does. */
    private static DatagramSocket mute;

    @BeforeAll
    static void open() throws IOException {
        mute = new DatagramSocket(new InetSocketAddress(FleetFixture.HOST, FleetFixture.PORT));
    }

    @AfterAll
    static void close() {
        mute.close();
        Screen.closeAll();
    }

    @BeforeEach
    void aSilentAccessPoint() {
        place = fixture.place("Saltmarsh");
        technician = fixture.person(Role.TECHNICIAN, null);
        Instant now = clock.instant();
        sink.accept(answered(place.deviceId(), now.minus(Duration.ofMinutes(5))));
        for (int minutes = 4; minutes >= 1; minutes--) {
            Instant at = now.minus(Duration.ofMinutes(minutes));
            sink.accept(Reading.empty(place.deviceId(), at, Outcome.NO_REPLY, 60));
        }
        awaitSilence(place.deviceId());
    }

    private void awaitSilence(long device) {
        Awaitility.await().atMost(Duration.ofSeconds(20)).until(() -> board.device(CustomerScope.everyone(), device)
                .filter(row -> row.condition() == Condition.SILENT)
                .isPresent());
    }

    private static Reading answered(long device, Instant at) {
        Values values = Values.builder(Subject.DEVICE)
                .set(Metric.ROUND_TRIP, 2.5)
                .set(Metric.CLIENTS, 7)
                .build();
        return new Reading(device, at, Outcome.ANSWERED, 60, values, List.of(), List.of(), Optional.empty());
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void theSilentAccessPointIsFoundOpenedAndPolled(int width) {
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            screen.check("fleet");
            page.fill("#search", place.customer());
            Locator only = page.locator("table tbody tr");
            page.waitForCondition(() -> only.count() == 1);
            assertThat(page.url()).contains("search=");
            assertThat(only.innerText()).contains("silent").contains(place.customer());
            page.locator("#site-" + place.siteId()).click();
            page.waitForURL("**/sites/" + place.siteId());
            screen.check("site");
            page.locator("#device-" + place.deviceId()).click();
            page.waitForURL("**/devices/" + place.deviceId());
            assertThat(page.locator("#device-live").innerText())
                    .contains("silent")
                    .contains("for 4 min")
                    .contains("no reply")
                    .contains("not available");
            screen.check("device");
            page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Poll now"))
                    .click();
            page.waitForSelector("#polled");
            assertThat(page.locator("#poll").innerText())
                    .contains("No figures: no reply")
                    .contains("without a reply");
            screen.check("polled");
            screen.complaints();
        }
    }

    /** One is silent longer than the other: the line says that of the one, and fits on a phone. */
    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void ofSeveralSilentOnesTheTimeIsThatOfTheLongest(int width) {
        long other = fixture.device(
                place.siteId(), place.credentialId(), "Second AP", FleetFixture.HOST, FleetFixture.PORT + 1);
        Instant now = clock.instant();
        sink.accept(answered(other, now.minus(Duration.ofMinutes(21))));
        for (int minutes = 20; minutes >= 1; minutes--) {
            sink.accept(Reading.empty(other, now.minus(Duration.ofMinutes(minutes)), Outcome.NO_REPLY, 60));
        }
        awaitSilence(other);
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            page.navigate(address + "?search=" + place.customer().replace(" ", "+"));
            Locator only = page.locator("table tbody tr");
            page.waitForCondition(() -> only.innerText().contains("all 2 silent"));
            assertThat(only.innerText()).contains("the longest for 2");
            screen.check("fleet-longest");
            page.navigate(address + "sites/" + place.siteId());
            assertThat(page.locator("#site-live").innerText()).contains("all 2 silent", "the longest for 2");
            screen.check("site-longest");
            screen.complaints();
        }
    }

    /** The page refreshes itself and keeps the place that the keyboard is at. */
    @ParameterizedTest
    @ValueSource(ints = {1280})
    void aRefreshKeepsTheFocus(int width) {
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            page.navigate(address + "?search=" + place.customer().replace(" ", "+"));
            page.locator("#site-" + place.siteId()).focus();
            String before = page.locator("#board time").last().innerText();
            page.waitForCondition(
                    () -> !page.locator("#board time").last().innerText().equals(before));
            assertThat(page.evaluate("document.activeElement.id")).isEqualTo("site-" + place.siteId());
            screen.complaints();
        }
    }

    /** Without scripts all but the live parts works. */
    @ParameterizedTest
    @ValueSource(ints = {1280})
    void itWorksWithoutScripts(int width) {
        try (Screen screen = Screen.withoutScripts(address, width)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            page.fill("#search", place.customer());
            page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Show"))
                    .click();
            page.locator("#site-" + place.siteId()).click();
            page.locator("#device-" + place.deviceId()).click();
            page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Poll now"))
                    .click();
            assertThat(page.locator("main").innerText()).contains("No figures: no reply");
        }
    }
}
