package org.roundsman.web;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.StringReader;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.YearMonth;
import java.util.EnumSet;
import java.util.HexFormat;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.dispatch.ReportState;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** Reports, as a program handles them. */
@QuarkusTest
class ReportsApiDbTest {

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Inject
    ReportsFixture reports;

    private FleetFixture.Place place;
    private YearMonth month;
    private Api api;

    @BeforeEach
    void aPlace() {
        place = fixture.place("Saltmarsh");
        month = reports.lastMonth();
        api = with(Role.ACCOUNT_MANAGER);
    }

    private Api with(Role role) {
        return Api.with(places.token(role, null, EnumSet.of(TokenScope.READ, TokenScope.CHANGE), null));
    }

    private static JsonPath require(int status, Response answer) {
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(status);
        return answer.jsonPath();
    }

    @Test
    void reportsAreListedInPiecesEachOnce() {
        long first = reports.kept(place, month, 1, ReportState.SENT, "");
        long second = reports.kept(place, month, 2, ReportState.TO_REVIEW, "");
        long third = reports.kept(place, month.minusMonths(1), 1, ReportState.FAILED, "");
        String mine = "/reports?customer=" + place.customerId();
        JsonPath piece = require(200, api.get(mine + "&size=2"));
        assertThat(piece.getList("items.id", Long.class)).containsExactly(first, second);
        JsonPath rest = api.request().get(piece.getString("next")).jsonPath();
        assertThat(rest.getList("items.id", Long.class)).containsExactly(third);
        assertThat(rest.getString("next")).isNull();
        assertThat(require(200, api.get(mine + "&state=to-review")).getList("items.id", Long.class))
                .containsExactly(second);
        assertThat(require(200, api.get(mine + "&month=" + month)).getList("items.newest", Boolean.class))
                .containsExactly(false, true);
        assertThat(require(200, api.get("/reports/" + second + "/revisions")).getList("items.revision"))
                .containsExactly(1, 2);
        for (String odd : List.of("state=x", "month=2026-13", "customer=x", "after=x")) {
            require(422, api.get("/reports?" + odd));
        }
    }

    @Test
    void whatAReportSaysIsGivenOutAsItIsKept() throws NoSuchAlgorithmException, IOException {
        long id = reports.kept(place, month, 1, ReportState.SENT, "Kept");
        String at = "/reports/" + id;
        JsonPath shown = require(200, api.get(at));
        assertThat(shown.getString("month")).isEqualTo(month.toString());
        assertThat(shown.getString("last")).isEqualTo(month.atEndOfMonth().toString());
        assertThat(shown.getString("remark")).isEqualTo("Kept");
        MessageDigest sha = MessageDigest.getInstance("SHA-256");
        byte[] figures = api.get(at + "/figures").asByteArray();
        assertThat(HexFormat.of().formatHex(sha.digest(figures))).isEqualTo(shown.getString("figuresSha256"));
        Response pdf = api.get(at + "/pdf");
        assertThat(HexFormat.of().formatHex(sha.digest(pdf.asByteArray()))).isEqualTo(shown.getString("pdfSha256"));
        assertThat(pdf.asByteArray()).hasSize(shown.getInt("pdfSize"));
        List<String> keys = require(200, api.get(at + "/tables")).getList("items.key");
        assertThat(keys).contains("sites", "days", "outages").hasSize(11);
        for (String key : keys) {
            JsonPath table = require(200, api.get(at + "/tables/" + key));
            Response csv = api.get(at + "/tables/" + key + "/csv");
            List<CSVRecord> rows = CSVParser.parse(new StringReader(csv.asString()), CSVFormat.RFC4180)
                    .getRecords();
            assertThat(rows.get(0).toList()).as(key).isEqualTo(table.getList("columns", String.class));
            assertThat(rows).as(key).hasSize(table.getList("rows").size() + 1);
        }
        require(404, api.get(at + "/tables/odd"));
        require(404, api.get(at + "/tables/odd/csv"));
    }

    @Test
    void aReportIsBuiltRemarkedOnAndApproved() {
        String entry = "{\"customerId\":" + place.customerId() + ",\"month\":\"" + month + "\"}";
        Response made = api.post("/reports", entry);
        long id = require(201, made).getLong("id");
        assertThat(made.header("Location")).endsWith("/api/v1/reports/" + id);
        assertThat(made.jsonPath().getString("state")).isEqualTo("waiting");
        String at = "/reports/" + id;
        require(409, api.post(at + "/approve"));
        reports.built(id, place);
        String look = "{\"language\":\"en\",\"paper\":\"letter\",\"costs\":true}";
        assertThat(require(200, api.post(at + "/look", look)).getString("paper"))
                .isEqualTo("letter");
        assertThat(require(422, api.post(at + "/look", "{\"language\":\"tlh\",\"paper\":\"letter\"}"))
                        .getString("errors[0].field"))
                .isEqualTo("language");
        require(403, with(Role.TECHNICIAN).post(at + "/approve"));
        assertThat(require(200, with(Role.TECHNICIAN).post(at + "/remark", "{\"remark\":\"Calm.\"}"))
                        .getString("remark"))
                .isEqualTo("Calm.");
        assertThat(require(200, api.post(at + "/approve")).getString("state")).isEqualTo("reviewed");
        require(409, api.post(at + "/remark", "{\"remark\":\"Too late\"}"));
        assertThat(require(200, api.post(at + "/reopen")).getString("state")).isEqualTo("to-review");
    }

    @Test
    void whatCannotBeBuiltIsRefusedByField() {
        String customer = "\"customerId\":" + place.customerId();
        assertThat(require(422, api.post("/reports", "{}")).getList("errors.field"))
                .containsExactlyInAnyOrder("customerId", "month");
        require(422, api.post("/reports", "{" + customer + ",\"month\":\"2026-10\",\"from\":\"2026-10-01\"}"));
        require(422, api.post("/reports", "{" + customer + ",\"from\":\"2026-10-09\",\"last\":\"2026-10-02\"}"));
        require(422, api.post("/reports", "{" + customer + ",\"from\":\"0001-01-01\",\"last\":\"2026-10-02\"}"));
        require(404, api.post("/reports", "{\"customerId\":999999999,\"month\":\"2026-01\"}"));
        require(409, api.post("/reports", "{" + customer + ",\"month\":\"" + month.plusMonths(2) + "\"}"));
        require(422, api.post("/reports/build-month", "{\"month\":\"x\"}"));
    }

    @Test
    void aLinkIsGivenOutOnceAndTakenBack() {
        String at = "/reports/" + reports.kept(place, month, 1, ReportState.SENT, "");
        JsonPath made = require(201, api.post(at + "/links", "{\"days\":7}"));
        assertThat(given().get(made.getString("path")).statusCode()).isEqualTo(200);
        Response listed = api.get(at + "/links");
        assertThat(require(200, listed).getList("items.opened")).containsExactly(1);
        assertThat(listed.asString()).doesNotContain(made.getString("path").substring("/report-link/".length()));
        assertThat(api.post(at + "/links/" + made.getLong("id") + "/revoke").statusCode())
                .isEqualTo(204);
        assertThat(given().get(made.getString("path")).statusCode()).isEqualTo(404);
        require(422, api.post(at + "/links", "{}"));
        require(409, api.post(at + "/links", "{\"days\":91}"));
        require(404, api.post(at + "/links/999999999/revoke"));
    }

    @Test
    void mailsAreListedAndOneThatCameBackIsNoted() {
        long id = reports.kept(place, month, 1, ReportState.SENT, "");
        long mail = reports.mail(id, "office@brook.example", "SENT", "");
        String at = "/reports/" + id + "/mails";
        assertThat(require(200, api.get(at)).getString("items[0].state")).isEqualTo("sent");
        require(409, api.post(at + "/" + mail + "/bounced", "{}"));
        assertThat(api.post(at + "/" + mail + "/bounced", "{\"why\":\"Mailbox is full\"}")
                        .statusCode())
                .isEqualTo(204);
        JsonPath back = require(200, api.get(at));
        assertThat(back.getString("items[0].state")).isEqualTo("bounced");
        assertThat(back.getString("items[0].why")).isEqualTo("Mailbox is full");
        assertThat(require(200, api.get("/reports/" + id)).getInt("mails.bounced"))
                .isEqualTo(1);
    }

    /** RFC 7396, and RFC 9110, 13.1.1. */
    @Test
    void aPlanIsChangedInPartAndOnlyAsItWasRead() {
        String at = "/reports/plans/" + place.customerId();
        Response before = api.get(at);
        JsonPath changed = require(200, api.patch(at, "{\"day\":2,\"recipients\":[\"office@brook.example\"]}"));
        assertThat(changed.getInt("day")).isEqualTo(2);
        assertThat(changed.getInt("hour")).isEqualTo(before.jsonPath().getInt("hour"));
        assertThat(changed.getList("recipients")).containsExactly("office@brook.example");
        Response late = api.request()
                .header("If-Match", before.header("ETag"))
                .contentType(Api.MERGE)
                .body("{\"day\":3}")
                .patch("/api/v1" + at);
        require(412, late);
        JsonPath refused = require(422, api.patch(at, "{\"day\":29,\"timeZone\":null,\"keepMonths\":5}"));
        assertThat(refused.getList("errors.field")).contains("day", "timeZone", "keepMonths");
        assertThat(require(200, api.get("/reports/plans?size=500&after=" + (place.customerId() - 1)))
                        .getList("items.customerId", Long.class))
                .contains(place.customerId());
    }

    @Test
    void aLookIsChangedWithoutItsLogo() {
        String at = "/reports/brands/" + place.customerId();
        assertThat(require(200, api.get(at)).getString("name")).isEqualTo(place.customer());
        JsonPath changed = require(200, api.patch(at, "{\"colour\":\"#0b5d5b\",\"lines\":[\"1 Quay\"]}"));
        assertThat(changed.getString("colour")).isEqualTo("#0b5d5b");
        assertThat(changed.getList("lines")).containsExactly("1 Quay");
        assertThat(require(422, api.patch(at, "{\"colour\":\"blue\"}")).getString("errors[0].field"))
                .isEqualTo("colour");
        assertThat(require(422, api.patch(at, "{\"logo\":\"iVBOR\"}")).getString("errors[0].field"))
                .isEqualTo("logo");
    }

    @Test
    void aViewerAndANarrowedTokenReadWhatWasSentAndDoNothing() {
        MarkedPlaces.Place own = places.place("Quillfeather");
        Api narrowed = Api.with(places.token(Role.OWNER, null, EnumSet.allOf(TokenScope.class), own.customerId()));
        for (Api one : List.of(Api.with(own.viewerToken()), narrowed)) {
            Response list = one.get("/reports");
            assertThat(require(200, list).getList("items.id", Long.class))
                    .containsExactly(own.reports().sentId());
            assertThat(list.asString()).doesNotContain("-unsent", "wren");
            require(404, one.get("/reports/" + own.reports().unsentId()));
            require(404, one.get("/reports/" + own.reports().unsentId() + "/figures"));
            assertThat(one.get("/reports/" + own.reports().sentId() + "/pdf").statusCode())
                    .isEqualTo(200);
            require(403, one.post("/reports/" + own.reports().sentId() + "/remark", "{\"remark\":\"x\"}"));
            require(403, one.get("/reports/plans/" + own.customerId()));
            require(403, one.get("/reports/" + own.reports().sentId() + "/links"));
        }
    }
}
