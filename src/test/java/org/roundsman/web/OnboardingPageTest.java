package org.roundsman.web;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.people.Role;

/** A customer with its sites and devices comes in from files, in a real browser. */
@QuarkusTest
class OnboardingPageTest {

    @TestHTTPResource("/")
    String address;

    @Inject
    FleetFixture fixture;

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    private static FilePayload file(String name, String text) {
        return new FilePayload(name, "text/csv", text.getBytes(UTF_8));
    }

    /** Six sites with 15 access points each. */
    private static FilePayload[] customer(String name, String keys) {
        StringBuilder sites = new StringBuilder("customer;site;time_zone;service_hours\r\n");
        StringBuilder devices = new StringBuilder("customer,site,device,kind,host,credentials,place\r\n");
        for (int site = 1; site <= 6; site++) {
            sites.append(name).append(";Clinic ").append(site).append(";Europe/Berlin;Mon-Fri 08:00-18:00\r\n");
            for (int ap = 1; ap <= 15; ap++) {
                devices.append(name)
                        .append(",Clinic ")
                        .append(site)
                        .append(",AP ")
                        .append(ap);
                devices.append(",access point,192.0.2.")
                        .append(ap)
                        .append(',')
                        .append(keys)
                        .append(",ceiling\r\n");
            }
        }
        return new FilePayload[] {
            file("devices.csv", devices.toString()),
            file("sites.csv", sites.toString()),
            file("customers.csv", "customer,note\r\n" + name + ",invented\r\n")
        };
    }

    @ParameterizedTest
    @CsvSource({"1280, true", "390, true", "390, false"})
    void aCustomerComesUnderWatchFromFiles(int width, boolean scripts) throws Exception {
        String name = "Pebblegate Dental " + UUID.randomUUID().toString().substring(0, 8);
        String technician = fixture.person(Role.TECHNICIAN, null);
        try (Screen screen = scripts ? Screen.open(address, width) : Screen.withoutScripts(address, width)) {
            Page page = screen.page();
            screen.signIn(technician, FleetFixture.PASSWORD);
            refused(screen, scripts, name);
            applied(screen, scripts, name);
            exported(page, name);
            check(screen, scripts, "onboarding-after");
            screen.complaints("422");
        }
    }

    /** Rows that are new, changed, the same and refused, each with what it holds and why. */
    @ParameterizedTest
    @ValueSource(ints = {1280, 390})
    void everyOutcomeIsShownWithItsValues(int width) {
        FleetFixture.Place place = fixture.place("Quillfeather School");
        String site = "Pier of " + place.customer();
        String device = "Pier AP of " + place.customer();
        String rest = "\r\n" + place.customer() + "," + site + ",";
        String devices = "customer,site,device,kind,host,port,credentials,interval_s,place"
                + rest + device + ",access point,127.99.0.1,16099,pier keys " + place.customer()
                + ",60,mast by the gate"
                + rest + "Hall,access point,192.0.2.40,161,pier keys " + place.customer() + ",60,ceiling"
                + rest + "Attic,toaster,192.0.2.41,70000,pier keys " + place.customer() + ",every minute,"
                + rest + "Yard,access point,,161,no such keys,60,\"" + "behind the shed, ".repeat(20) + "\"\r\n";
        try (Screen screen = Screen.open(address, width)) {
            Page page = screen.page();
            screen.signIn(fixture.person(Role.TECHNICIAN, null), FleetFixture.PASSWORD);
            page.navigate(address + "onboarding");
            page.setInputFiles("#files", new FilePayload[] {
                file("devices.csv", devices),
                file("customers.csv", "customer,note\r\n" + place.customer() + ",Invented\r\n")
            });
            page.click("text=Make a dry run");
            ended(page);
            assertThat(page.locator("main").innerText())
                    .contains("port “70000”: ")
                    .contains("kind “toaster”: ")
                    .contains("interval_s “every minute”: ")
                    .containsPattern("place “(behind the shed, ){5}behind the she…”: ");
            screen.check("import-values");
            page.click("text=5 in all");
            page.waitForURL("**outcome=all");
            page.locator("summary").first().click();
            assertThat(page.locator("main").innerText())
                    .contains("mast → mast by the gate")
                    .contains("nothing to write");
            screen.check("import-outcomes");
            screen.complaints();
        }
    }

    private void refused(Screen screen, boolean scripts, String name) {
        Page page = screen.page();
        page.navigate(address + "onboarding");
        check(screen, scripts, "onboarding");
        page.setInputFiles("#files", file("odd.csv", "customer,site,timezone\r\nA,B,C\r\n"));
        page.click("text=Make a dry run");
        page.waitForSelector("[role=alert]");
        assertThat(page.locator("[role=alert]").innerText()).contains("odd.csv").contains("is time_zone meant?");
        check(screen, scripts, "onboarding-fault");
        page.setInputFiles("#files", customer(name, "no such keys"));
        page.click("text=Make a dry run");
        ended(page);
        check(screen, scripts, "import-refused");
        assertThat(page.locator("main").innerText())
                .contains("90 refused")
                .contains("7 new")
                .contains("separated by semicolons")
                .contains("all or nothing");
        assertThat(page.locator("main li").allInnerTexts())
                .anyMatch(
                        text -> text.startsWith("90 rows: credentials: there are no SNMP credentials “no such keys”"));
        assertThat(page.locator("#apply").count()).isZero();
        page.click("text=90 refused");
        page.waitForURL("**outcome=refused");
        assertThat(page.locator("tbody tr").count()).isEqualTo(25);
        assertThat(page.locator("tbody tr").first().innerText())
                .contains("Clinic 1")
                .contains("no SNMP credentials “no such keys”");
        page.click("text=Next");
        page.waitForURL("**page=2");
        page.navigate(page.url().replace("page=2", "page=4"));
        assertThat(page.locator("tbody tr").count()).isEqualTo(15);
    }

    private void applied(Screen screen, boolean scripts, String name) {
        Page page = screen.page();
        enterKeys(page, name);
        page.navigate(address + "onboarding");
        page.setInputFiles("#files", customer(name, "keys of " + name));
        page.click("text=Make a dry run");
        ended(page);
        check(screen, scripts, "import-dry-run");
        page.click("#apply");
        ended(page);
        check(screen, scripts, "import-applied");
        assertThat(page.locator("h1").innerText()).isEqualTo("Imported");
    }

    private static void exported(Page page, String name) throws IOException {
        page.click("text=Go on: look for devices");
        page.waitForURL("**/onboarding");
        assertThat(page.locator("main").innerText())
                .contains(name)
                .contains("Clinic 6")
                .contains("Look for devices");
        var download = page.waitForDownload(() -> {
            page.selectOption("#table", "devices");
            page.selectOption("#customer", new com.microsoft.playwright.options.SelectOption().setLabel(name));
            page.click("text=Export as CSV");
        });
        assertThat(Files.readString(download.path()).lines()).hasSize(91);
    }

    /** The checks are scripts themselves. */
    private static void check(Screen screen, boolean scripts, String name) {
        if (scripts) {
            screen.check(name);
        }
    }

    private static void enterKeys(Page page, String name) {
        page.navigate(page.url().replaceFirst("/onboarding.*", "/credentials/new"));
        page.fill("#name", "keys of " + name);
        page.selectOption("#version", "2");
        page.fill("#community", "invented-secret");
        page.click("main button:has-text('Save')");
        page.waitForURL("**/credentials**");
    }

    /** Without scripts the page has a link to look again. */
    private static void ended(Page page) {
        page.waitForURL("**/onboarding/imports/**");
        page.waitForCondition(() -> {
            if (page.locator("#progress a").count() > 0) {
                page.reload();
            }
            return page.locator("table").count() > 0;
        });
    }
}
