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

/** The pages of notices, in a real browser. */
@QuarkusTest
class NoticesPageTest {

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
    void anOwnerChoosesAddsAWebhookAndSetsAChain(int width) {
        fixture.place("Saltmarsh");
        String owner = fixture.person(Role.OWNER, null);
        try (Screen screen = Screen.open(address, width)) {
            screen.signIn(owner, FleetFixture.PASSWORD);
            Page page = screen.page();
            page.navigate(address + "notices");
            screen.check("notices");
            page.fill("#mailAddress", "wren@fernhollow.example");
            page.fill("#zone", "Europe/Berlin");
            page.fill("#hours", "at night");
            page.click("text=Save");
            screen.check("notices-wrong");
            assertThat(page.textContent("#hours-wrong")).contains("Mon-Fri 08:00-18:00");
            page.fill("#hours", "Mon-Fri 07:00-19:00");
            page.click("text=Save");
            assertThat(page.inputValue("#hours")).isEqualTo("Mon-Fri 07:00-19:00");
            page.navigate(address + "notices/webhooks");
            page.fill("#name", "chat room");
            page.fill("#url", "http://127.0.0.1:9/hooks/a-rather-long-path-that-has-to-wrap-somewhere/0123456789");
            page.click("text=Add it");
            screen.check("webhook-secret");
            assertThat(page.textContent("#once")).hasSize(43);
            page.click("text=Back to the webhooks");
            screen.check("webhooks");
            page.navigate(address + "notices");
            page.click("text=Send me a test message");
            assertThat(page.textContent("main")).contains("A test message is on its way");
            page.navigate(address + "notices/outbox");
            screen.check("outbox");
            page.navigate(address + "notices/escalation");
            page.check("input[name=step1] >> nth=0");
            page.click("text=Set it");
            screen.check("escalation");
            assertThat(page.textContent("main")).contains("from major, every 15 minutes");
            screen.complaints("422");
        }
    }
}
