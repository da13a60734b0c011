package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.discovery.Neighbourhood;
import org.roundsman.people.Role;

/** A technician looks for the devices of a new site, in a real browser. */
@QuarkusTest
class SweepsPageTest {

    private static final AtomicInteger NUMBER = new AtomicInteger(5_000);

    @TestHTTPResource("/")
    String address;

    @Inject
    FleetFixture fixture;

    private Neighbourhood street;
    private FleetFixture.Place place;
    private String technician;
    private final int first = NUMBER.getAndAdd(400);

    @BeforeEach
    void agents() throws IOException {
        place = fixture.place("Saltmarsh");
        technician = fixture.person(Role.TECHNICIAN, null);
        street = new Neighbourhood();
    }

    private void houses(int count) throws IOException {
        for (int i = 0; i < count; i++) {
            street.house("127.83." + i / 200 + "." + (1 + i % 200), 2, "quayside-secret", first + i);
        }
    }

    @AfterEach
    void close() throws IOException {
        street.close();
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

    private void sweep(Screen screen, String ranges) {
        begin(screen, ranges);
        screen.page().waitForSelector("#found", new Page.WaitForSelectorOptions().setTimeout(120_000));
    }

    private void begin(Screen screen, String ranges) {
        Page page = screen.page();
        page.navigate(address + "sites/" + place.siteId() + "/sweeps");
        page.fill("#ports", String.valueOf(street.port()));
        page.fill("#ranges", ranges);
        page.waitForCondition(() -> page.locator("#count").innerText().contains("of at most 4,096"));
        press(page, "Save and start the sweep");
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void aSiteIsSweptReviewedAndAdopted(int width) throws IOException {
        houses(3);
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            page.navigate(address + "sites/" + place.siteId() + "/sweeps");
            page.fill("#ranges", "10.0.0.0/8");
            page.waitForCondition(() -> page.locator("#count").innerText().contains("16,777,214 addresses"));
            screen.check("sweeps-empty");
            sweep(screen, "127.83.0.0/28");
            assertThat(page.locator("#sweep-live").innerText())
                    .contains("The sweep is done")
                    .contains("3 answered");
            Locator lines = page.locator("table.sweep-found tbody tr");
            assertThat(lines.count()).isEqualTo(3);
            screen.check("sweeps-found");
            lines.nth(0).locator("input[name=name]").fill("");
            press(page, "Adopt what is ticked");
            assertThat(page.locator("#review .wrong").first().innerText()).contains("must not be empty");
            screen.check("sweeps-fault");
            page.locator("table.sweep-found tbody tr")
                    .nth(0)
                    .locator("input[name=name]")
                    .fill("Ticket office");
            page.locator("table.sweep-found tbody tr")
                    .nth(2)
                    .locator("input[name=tick]")
                    .uncheck();
            press(page, "Adopt what is ticked");
            assertThat(page.locator("#sweep-live").innerText()).contains("Adopted: 2 new devices");
            assertThat(page.locator("table.sweep-found tbody tr").count()).isEqualTo(1);
            screen.check("sweeps-adopted");
            page.locator("button[name=aside]").first().click();
            assertThat(page.locator("#sweep-live").innerText()).contains("Set aside as not ours (1)");
            sweptAgain(screen);
            page.navigate(address + "sites/" + place.siteId());
            assertThat(page.locator("main").innerText()).contains("Ticket office");
            screen.complaints("422");
        }
    }

    /** Everything else that the list can hold: what is in the fleet, what was not met, what is set aside. */
    private void sweptAgain(Screen screen) {
        Page page = screen.page();
        page.locator("summary", new Page.LocatorOptions().setHasText("What to ask"))
                .click();
        screen.check("sweeps-plan");
        press(page, "Save and start the sweep");
        page.waitForSelector("text=1 set aside and not asked");
        page.waitForSelector("text=In the fleet already (2)");
        page.locator("summary", new Page.LocatorOptions().setHasText("In the fleet already"))
                .click();
        page.locator("summary", new Page.LocatorOptions().setHasText("Set aside"))
                .click();
        assertThat(page.locator("#absent").innerText()).contains("Entered, but not met in this sweep (1)");
        screen.check("sweeps-again");
    }

    /** At one width: how a list looks at either is tried with a shorter one. */
    @Test
    void threeHundredLinesAreTickedAndAdoptedAtOnce() throws IOException {
        houses(300);
        try (Screen screen = Screen.open(address, 1280)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            sweep(screen, "127.83.0.1-127.83.0.200\n127.83.1.1-127.83.1.100");
            assertThat(page.locator("table.sweep-found tbody tr").count()).isEqualTo(300);
            press(page, "Tick none");
            assertThat(page.locator("input[name=tick]:checked").count()).isZero();
            press(page, "Tick all");
            assertThat(page.locator("input[name=tick]:checked").count()).isEqualTo(300);
            screen.check("sweeps-300");
            press(page, "Adopt what is ticked");
            page.waitForSelector("text=Adopted: 300 new devices");
            screen.complaints();
        }
    }

    /** Far more addresses than answer, so that it is still under way when it is looked at. */
    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void aSweepUnderWayIsShownAndCancelled(int width) throws IOException {
        houses(1);
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            begin(screen, "127.83.16.0/20");
            page.waitForSelector("text=Cancel the sweep");
            screen.check("sweeps-running");
            press(page, "Cancel the sweep");
            page.waitForSelector("text=Go on with the rest");
            screen.check("sweeps-cancelled");
            screen.complaints();
        }
    }

    @Test
    void itWorksWithoutScripts() throws IOException {
        houses(2);
        try (Screen screen = Screen.withoutScripts(address, 1280)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            page.navigate(address + "sites/" + place.siteId() + "/sweeps");
            page.fill("#ports", String.valueOf(street.port()));
            page.fill("#ranges", "127.83.0.1-127.83.0.2");
            press(page, "Save and start the sweep");
            screen.reloadUntil("#found");
            press(page, "Adopt what is ticked");
            assertThat(page.locator("main").innerText()).contains("Adopted: 2 new devices");
        }
    }
}
