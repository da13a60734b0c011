package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.people.Role;

@QuarkusTest
class EditsDbTest {

    @Inject
    FleetFixture fixture;

    private FleetFixture.Place place;
    private Browser browser;

    @BeforeEach
    void place() {
        place = fixture.place("Saltmarsh");
        browser = fixture.browser(Role.TECHNICIAN, null);
    }

    private Map<String, String> device() {
        return new HashMap<>(Map.of(
                "name", "Gangway",
                "kind", "ACCESS_POINT",
                "host", "gangway.example",
                "port", "161",
                "credentialId", String.valueOf(place.credentialId()),
                "place", "mast",
                "intervalSeconds", "60"));
    }

    private Response addDevice(Map<String, String> fields) {
        String site = "/sites/" + place.siteId();
        return browser.post(site + "/devices/new", site + "/devices", fields);
    }

    @Test
    void aDeviceEnteredByHandAppearsOnItsSite() {
        Response answer = addDevice(device());
        assertThat(answer.statusCode()).isEqualTo(303);
        assertThat(browser.get("/sites/" + place.siteId()).asString()).contains("Gangway");
        String path = answer.header("Location").replaceFirst("^https?://[^/]+", "");
        assertThat(browser.get(path).asString()).contains("gangway.example").contains("unwatched");
    }

    /** OWASP ASVS 5.0: 2.2.1 and 2.2.2, the server refuses what the browser would have. */
    @ParameterizedTest
    @CsvSource({
        "port, 0, from 1 to 65535",
        "port, 65536, from 1 to 65535",
        "port, snmp, whole number",
        "host, 300.1.1.1, neither an IPv4",
        "host, two words.example, neither an IPv4",
        "intervalSeconds, 9, from 10 to 3600",
        "intervalSeconds, 3601, from 10 to 3600",
        "credentialId, 987654321, not there any more",
        "credentialId, '', choose the SNMP credentials",
        "kind, TOASTER, choose access point",
        "name, '', must not be empty"
    })
    void aBadEntryIsNamedWithItsMendAndTheRestIsKept(String field, String value, String mend) {
        Map<String, String> fields = device();
        fields.put(field, value);
        Response answer = addDevice(fields);
        assertThat(answer.statusCode()).isEqualTo(422);
        String page = answer.asString();
        assertThat(page).contains("id=\"" + field + "-wrong\"").contains(mend).contains("aria-invalid=\"true\"");
        assertThat(page).contains(field.equals("place") ? "Gangway" : "value=\"mast\"");
        assertThat(browser.get("/sites/" + place.siteId()).asString()).doesNotContain("Gangway");
    }

    @Test
    void twoDevicesOfOneSiteDoNotShareAName() {
        addDevice(device());
        Map<String, String> again = device();
        again.put("host", "other.example");
        assertThat(addDevice(again).asString()).contains("id=\"name-wrong\"");
    }

    /** OWASP ASVS 5.0: 15.3.1 in spirit, no page shows an SNMP secret again. */
    @Test
    void secretsAreNeverShownAgain() {
        assertThat(browser.get("/credentials/" + place.credentialId() + "/edit").asString())
                .doesNotContain("quayside-secret");
        assertThat(browser.get("/credentials").asString()).doesNotContain("quayside-secret");
        Response refused = browser.post(
                "/credentials/new",
                "/credentials",
                Map.of("name", "", "version", "2", "community", "lighthouse-secret", "owner", ""));
        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(refused.asString()).doesNotContain("lighthouse-secret");
    }

    @Test
    void aChangeWithoutASecretKeepsTheOneThatIsThere() {
        Map<String, String> fields = Map.of(
                "name",
                "renamed " + place.customer(),
                "version",
                "2",
                "community",
                "",
                "owner",
                "customer-" + place.customerId());
        String path = "/credentials/" + place.credentialId();
        assertThat(browser.post(path + "/edit", path, fields).statusCode()).isEqualTo(303);
        var credentials = fixture.credentials();
        var kept = credentials.secrets(credentials.find(place.credentialId()).orElseThrow());
        assertThat(kept.community()).isEqualTo("quayside-secret");
    }

    @Test
    void aSiteIsEnteredWithHoursUplinkAndContacts() {
        Map<String, String> fields = new HashMap<>(Map.of(
                "name", "North Pier",
                "timeZone", "Europe/London",
                "street", "2 Quay",
                "postcode", "",
                "town", "Saltmarsh",
                "country", "gb",
                "accessNote", "Ring at the kiosk",
                "uplinkDown", "2.5",
                "uplinkUp", "",
                "hours", "Mon-Fri 08:00-18:00\nSat 9:00-24:00"));
        fields.putAll(Map.of(
                "contactName", "Kiosk", "contactDuty", "key", "contactPhone", "+1-555-0100", "contactEmail", ""));
        String customer = "/customers/" + place.customerId() + "/sites";
        Response answer = browser.post(customer + "/new", customer, fields);
        assertThat(answer.statusCode()).isEqualTo(303);
        String page = browser.get(answer.header("Location").replaceFirst("^https?://[^/]+", ""))
                .asString();
        assertThat(page)
                .contains("Mon-Fri 08:00-18:00")
                .contains("Sat 09:00-24:00")
                .contains("Ring at the kiosk");
        assertThat(page)
                .contains("2.5\u00a0Mb/s down, not known up")
                .contains("+1-555-0100")
                .contains(", GB");
    }

    @ParameterizedTest
    @CsvSource({
        "timeZone, Mars/Olympus, no time zone of that name",
        "hours, Mon 18:00-08:00, closing comes before opening",
        "hours, sometimes, cannot be read",
        "uplinkDown, fast, number of Mb/s",
        "country, Germany, two capital letters"
    })
    void aBadSiteIsNamedWithItsMend(String field, String value, String mend) {
        Map<String, String> fields = new HashMap<>(Map.of("name", "North Pier", "timeZone", "Europe/London"));
        fields.put(field, value);
        String customer = "/customers/" + place.customerId() + "/sites";
        Response answer = browser.post(customer + "/new", customer, fields);
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.asString()).contains(mend);
    }

    @Test
    void aRemovedDeviceIsGone() {
        String path = "/devices/" + place.deviceId();
        assertThat(browser.post(path + "/edit", path + "/remove", Map.of()).statusCode())
                .isEqualTo(303);
        assertThat(browser.get(path).statusCode()).isEqualTo(404);
    }

    @Test
    void theOwnerHandsOutAPasswordThatIsShownOnce() {
        Browser owner = fixture.browser(Role.OWNER, null);
        String name = "otter-" + place.customerId();
        Response added = owner.post("/people", "/people", Map.of("name", name, "role", "TECHNICIAN"));
        String password = added.asString().replaceAll("(?s).*id=\"once\">([^<]+)<.*", "$1");
        assertThat(owner.get("/people").asString()).contains(name).doesNotContain(password);
        assertThat(new Browser().signIn(name, password).header("Location")).endsWith("/password");
        Response viewer = owner.post("/people", "/people", Map.of("name", name + "-2", "role", "VIEWER"));
        assertThat(viewer.statusCode()).isEqualTo(422);
        assertThat(viewer.asString()).contains("id=\"customer-wrong\"");
    }
}
