package org.roundsman.web;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** Warranty by requests: evidence, exports, calendars, the API, and who may see what. */
@QuarkusTest
class WarrantyPagesDbTest {

    private static final Pattern ONCE = Pattern.compile("id=\"once\">([^<]+)<");
    private static final byte[] PDF = "%PDF-1.7 invented".getBytes(StandardCharsets.US_ASCII);

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Inject
    Clock clock;

    private MarkedPlaces.Place place;
    private Browser manager;

    @BeforeEach
    void aPlace() {
        place = places.place("Saltmarsh");
        manager = fixture.browser(Role.ACCOUNT_MANAGER, null);
    }

    private Response attach(String name, byte[] content) {
        String page = "/warranty/units/devices/" + place.deviceId();
        return manager.request()
                .multiPart("anti-forgery", manager.token(page))
                .multiPart("file", name, content, "application/pdf")
                .post("/warranty/units/purchases/" + place.cover().purchaseId() + "/evidence");
    }

    /** OWASP ASVS 5.0: 3.4.4, 5.2.1, 5.3.2. */
    @Test
    void evidenceIsTakenByItsOctetsAndGivenOutAsADownload() {
        assertThat(attach("../../Rechnung (Moos).html", PDF).statusCode()).isEqualTo(303);
        long id = places.number("select max(id) from evidence where purchase_id = "
                + place.cover().purchaseId());
        Response file = manager.get("/warranty/evidence/" + id);
        assertThat(file.asByteArray()).isEqualTo(PDF);
        assertThat(file.contentType()).isEqualTo("application/pdf");
        assertThat(file.header("X-Content-Type-Options")).isEqualTo("nosniff");
        assertThat(file.header("Cache-Control")).isEqualTo("no-store");
        assertThat(file.header("Content-Disposition"))
                .isEqualTo("attachment; filename=\"Rechnung _Moos_.pdf\"; filename*=UTF-8''Rechnung%20%28Moos%29.pdf");
        Response twice = attach("other.pdf", PDF);
        assertThat(twice.statusCode()).isEqualTo(422);
        assertThat(twice.asString()).contains("attached already, as Rechnung (Moos).pdf");
        assertThat(attach("x.pdf", "<script>".getBytes(StandardCharsets.US_ASCII))
                        .statusCode())
                .isEqualTo(422);
        byte[] large = new byte[5 * 1024 * 1024 + 1];
        System.arraycopy(PDF, 0, large, 0, PDF.length);
        assertThat(attach("large.pdf", large).asString()).contains("larger than 5 MB");
        assertThat(attach("huge.pdf", new byte[6 * 1024 * 1024]).statusCode()).isEqualTo(413);
        String page = "/warranty/units/devices/" + place.deviceId();
        assertThat(manager.post(page, "/warranty/evidence/" + id + "/remove", Map.of())
                        .statusCode())
                .isEqualTo(303);
        assertThat(manager.get("/warranty/evidence/" + id).statusCode()).isEqualTo(404);
    }

    private String calendar(Browser of) {
        Response made = of.post(
                "/warranty/calendars",
                "/warranty/calendars",
                Map.of("name", "phone", "customer", String.valueOf(place.customerId())));
        Matcher once = ONCE.matcher(made.asString());
        assertThat(once.find()).as(made.asString()).isTrue();
        return once.group(1).replaceFirst("^https?://[^/]+", "");
    }

    @Test
    void aCalendarIsReadWithoutASignInUntilItIsEnded() {
        String address = calendar(manager);
        assertThat(address).matches("/calendar/[A-Za-z0-9_-]{43}\\.ics");
        places.tell("insert into warranty_contract (customer_id, number, begins_on, ends_on) values ("
                + place.customerId() + ", 'K-1', current_date - 1, current_date + 50)");
        places.tell("insert into contract_unit select id, '" + place.marker()
                + "' from warranty_contract where number = 'K-1' and customer_id = " + place.customerId());
        Response read = given().get(address);
        assertThat(read.statusCode()).isEqualTo(200);
        assertThat(read.contentType()).isEqualTo("text/calendar;charset=utf-8");
        assertThat(read.header("Cache-Control")).isEqualTo("no-store");
        assertThat(read.asString()).startsWith("BEGIN:VCALENDAR\r\n").contains("SUMMARY:Warranty ends: 1 access point");
        assertThat(manager.get("/warranty/calendars").asString())
                .as("it is shown once")
                .doesNotContain(address);
        long id = places.number(
                "select max(id) from calendar_address where name = 'phone' and customer_id = " + place.customerId());
        assertThat(places.number("select count(*) from calendar_address where id = " + id
                        + " and used_at is not null and hash <> convert_to('" + address + "', 'UTF8')"))
                .isEqualTo(1);
        Browser other = fixture.browser(Role.TECHNICIAN, null);
        String revoke = "/warranty/calendars/" + id + "/revoke";
        assertThat(other.post("/warranty/calendars", revoke, Map.of()).statusCode())
                .isEqualTo(404);
        Browser owner = fixture.browser(Role.OWNER, null);
        assertThat(owner.post("/warranty/calendars", revoke, Map.of()).statusCode())
                .isEqualTo(303);
        assertThat(given().get(address).statusCode()).isEqualTo(404);
        assertThat(given().get("/calendar/" + "x".repeat(43) + ".ics").statusCode())
                .isEqualTo(404);
    }

    @Test
    void aContractNamesWhatBecameOfItsUnits() {
        String gone = "GONE " + place.marker();
        places.tell("insert into warranty_contract (customer_id, number, begins_on, ends_on) values ("
                + place.customerId() + ", 'G-1', current_date - 1, current_date + 50)");
        long contract = places.number(
                "select max(id) from warranty_contract where number = 'G-1' and customer_id = " + place.customerId());
        places.tell("insert into contract_unit (contract_id, serial) values (" + contract + ", ?)", gone);
        String page = "/warranty/contracts/" + contract;
        assertThat(manager.get(page).asString()).contains("no unit tells this serial number now");
        places.tell(
                "insert into unit (customer_id, serial, fate, fate_since, known_since) values (" + place.customerId()
                        + ", ?, 'SCRAPPED', now(), now())",
                gone);
        assertThat(manager.get(page).asString())
                .contains("this unit was scrapped")
                .doesNotContain("no unit tells this serial number now");
        assertThat(manager.get("/units?customer=" + place.customerId() + "&serial=" + gone)
                        .statusCode())
                .as("its page, where the contract leads")
                .isEqualTo(303);
        Response told = manager.post(page, page + "/serials", Map.of("serials", gone + "\nNOBODY-3"));
        assertThat(told.asString())
                .contains("Not taken, since these units left for good", gone + ": scrapped")
                .contains("no unit of this customer has such a serial number", "NOBODY-3");
    }

    @Test
    void everyListIsASheetThatNoSpreadsheetTakesForFormulas() {
        places.tell("update device set name = '=1+1' where id = " + place.deviceId());
        for (String path : List.of(
                "/warranty/units.csv", "/warranty/year.csv", "/warranty/contracts.csv", "/warranty/renewals.csv")) {
            Response csv = manager.get(path + "?customer=" + place.customerId());
            assertThat(csv.statusCode()).as(path).isEqualTo(200);
            assertThat(csv.contentType().replace(" ", "")).isEqualTo("text/csv;charset=utf-8");
            assertThat(csv.header("Content-Disposition")).startsWith("attachment; filename=\"");
            assertThat(csv.asString()).startsWith("\uFEFF").contains("\r\n").doesNotContain(",=");
        }
        assertThat(manager.get("/warranty/units.csv?customer=" + place.customerId())
                        .asString())
                .contains("'=1+1");
    }

    @Test
    void theRenewalListIsAPdfToo() {
        Response pdf = manager.get("/warranty/renewals.pdf?customer=" + place.customerId() + "&from=2026-01-01&to="
                + LocalDate.now(clock).plusYears(3));
        assertThat(pdf.contentType()).isEqualTo("application/pdf");
        assertThat(new String(pdf.asByteArray(), 0, 5, StandardCharsets.US_ASCII))
                .isEqualTo("%PDF-");
    }

    /** 2,001 spares under one contract; taken away again, since other tests ask for every unit. */
    @Test
    void aPaperOfTooManyUnitsIsRefusedWithWords() {
        String bulk = " from generate_series(1, 2001) n";
        places.tell(
                "insert into purchase (customer_id, serial) select " + place.customerId() + ", 'BULK-' || n" + bulk);
        places.tell("insert into warranty_contract (customer_id, number, begins_on, ends_on) values ("
                + place.customerId() + ", 'BULK', current_date - 30, current_date + 30)");
        places.tell("insert into contract_unit (contract_id, serial) select (select max(id) from warranty_contract),"
                + " 'BULK-' || n" + bulk);
        try {
            Response refused = manager.get("/warranty/renewals.pdf?customer=" + place.customerId());
            assertThat(refused.statusCode()).isEqualTo(422);
            assertThat(refused.contentType()).startsWith("text/html");
            assertThat(refused.asString()).contains("narrow it by customer or days");
        } finally {
            places.tell("delete from warranty_contract where number = 'BULK'");
            places.tell("delete from purchase where serial like 'BULK-%'");
        }
    }

    @Test
    void aViewerSeesNoPricesAnywhere() {
        Browser viewer = fixture.browser(Role.VIEWER, place.customerId());
        for (String path : List.of("/warranty", "/warranty/units", "/warranty/renewals", "/warranty/renewals.pdf")) {
            assertThat(viewer.get(path).statusCode()).as(path).isEqualTo(403);
        }
        Api api = Api.with(place.viewerToken());
        assertThat(api.get("/warranty/units").statusCode()).isEqualTo(403);
        assertThat(api.get("/warranty/contracts").statusCode()).isEqualTo(403);
    }

    @Test
    void theApiListsUnitsInPiecesAndSaysWhatItTakes() {
        Api api = Api.with(places.token(Role.TECHNICIAN, null, EnumSet.of(TokenScope.READ), null));
        String mine = "/warranty/units?customer=" + place.customerId();
        Response all = api.get(mine);
        assertThat(all.jsonPath().getList("items.deviceId", Long.class)).containsExactly(place.deviceId());
        assertThat(all.jsonPath().getString("items[0].unit")).isEqualTo("d" + place.deviceId());
        assertThat(all.jsonPath().getString("items[0].status"))
                .as("a contract covers it for a week yet")
                .isEqualTo("ends-within-30");
        assertThat(all.jsonPath().getList("items[0].derivation")).isNotEmpty();
        Response piece = api.get("/warranty/units?size=1");
        assertThat(piece.jsonPath().getString("next")).startsWith("/api/v1/warranty/units?size=1&after=d");
        assertThat(api.get(mine + "&status=covered").jsonPath().getList("items"))
                .isEmpty();
        for (String odd : List.of("status=x", "month=2026-13", "after=made-up", "model=x")) {
            assertThat(api.get(mine + "&" + odd).statusCode()).as(odd).isEqualTo(422);
        }
        long contract =
                places.number("select max(id) from warranty_contract where customer_id = " + place.customerId());
        assertThat(api.get("/warranty/contracts?after=" + (contract - 1)).asString())
                .as("other tests have left contracts too, so the list is asked from this one on")
                .contains(place.marker());
    }

    @Test
    void anOddAddressStillShowsThePage() {
        for (String odd : List.of(
                "/warranty?customer=x&model=-1",
                "/warranty/units?page=0&month=13&status=y&site=z",
                "/warranty/units?page=999999",
                "/warranty/renewals?from=x&to=2026-01-01&customer=999999999",
                "/warranty/contracts?page=-1")) {
            assertThat(manager.get(odd).statusCode()).as(odd).isEqualTo(200);
        }
    }
}
