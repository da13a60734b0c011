package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.people.Role;

/** The forms in which customers, sites and devices are entered by hand, on a desk and on a ladder. */
@QuarkusTest
class FormsPageTest {

    @TestHTTPResource("/")
    String address;

    @Inject
    FleetFixture fixture;

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void aCustomerASiteAndADeviceAreEntered(int width) {
        FleetFixture.Place place = fixture.place("Thistledown");
        String name = "Orrin & Vale " + System.nanoTime();
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(fixture.person(Role.TECHNICIAN, null), FleetFixture.PASSWORD);
            page.navigate(address + "customers/new");
            screen.check("customer-new");
            page.fill("#name", name);
            page.click("main button");
            page.waitForURL("**/sites/new");
            page.fill("#name", "Corner shop");
            page.fill("#timeZone", "Europe/Nowhere");
            page.click("main button");
            page.waitForSelector("[role=alert]");
            screen.check("site-fault");
            page.fill("#timeZone", "Europe/Berlin");
            page.click("main button");
            page.waitForURL("**/sites/*");
            screen.check("site-empty");
            page.click("text=Add the first device");
            screen.check("device-new");
            page.navigate(address + "devices/" + place.deviceId() + "/edit");
            page.locator("summary").click();
            screen.check("device-edit");
            assertThat(page.locator("main").innerText()).contains("Remove this device from the fleet");
            page.navigate(address + "customers");
            assertThat(page.locator("main").innerText()).contains(name).contains("Corner shop");
            screen.check("customers");
            screen.complaints("422");
        }
    }
}
