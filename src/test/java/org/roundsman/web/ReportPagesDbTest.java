package org.roundsman.web;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.config.HttpClientConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.YearMonth;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.dispatch.ReportState;
import org.roundsman.people.Role;

/** Reports by requests: who sees what, files, links, review, plans and looks. */
@QuarkusTest
class ReportPagesDbTest {

    private static final Pattern ONCE = Pattern.compile("id=\"once\">([^<]+)<");

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Inject
    ReportsFixture reports;

    private FleetFixture.Place place;
    private Browser manager;
    private YearMonth month;

    @BeforeEach
    void aPlace() {
        place = fixture.place("Saltmarsh");
        manager = fixture.browser(Role.ACCOUNT_MANAGER, null);
        month = reports.lastMonth();
    }

    private boolean is(String state, long report) {
        return places.number("select count(*) from report where state = '" + state + "' and id = " + report) == 1;
    }

    /** A month in which nothing was found good has nothing to send, and the page says so. */
    @Test
    void sendingAllOfAMonthWithoutReviewedReportsIsRefusedWithTheReason() {
        assertThat(manager.post("/reports", "/reports/send-all", Map.of("month", "2019-02"))
                        .statusCode())
                .isEqualTo(422);
        assertThat(manager.post("/reports", "/reports/send-all", Map.of("month", "2019-02"))
                        .asString())
                .contains("No report of this month was found good");
    }

    @Test
    void aViewerSeesOwnReportsOnceTheyAreSentAndNothingOfOthers() {
        MarkedPlaces.Place own = places.place("Quillfeather");
        Browser viewer = fixture.browser(Role.VIEWER, own.customerId());
        String list = viewer.get("/reports").asString();
        assertThat(list)
                .contains("/reports/" + own.reports().sentId())
                .doesNotContain("/reports/" + own.reports().unsentId())
                .doesNotContain(own.marker() + "-unsent");
        String page = viewer.get("/reports/" + own.reports().sentId()).asString();
        assertThat(page)
                .contains(own.marker())
                .doesNotContain("-unsent", "id=\"approve", "Recipients by the plan", "reports.js", "wren");
        for (String part : List.of("", "/pdf", "/json", "/tables/sites.csv", "/progress")) {
            assertThat(viewer.get("/reports/" + own.reports().unsentId() + part).statusCode())
                    .as(part)
                    .isIn(403, 404);
        }
        for (String path : List.of("/reports/archive", "/reports/plans", "/reports/look", "/reports/progress")) {
            assertThat(viewer.get(path).statusCode()).as(path).isEqualTo(403);
        }
    }

    /** That something else is on its way is not the customer's to know. */
    @Test
    void aViewerIsNotToldOfALaterRevisionBeforeItIsSent() {
        long first = reports.kept(place, month, 1, ReportState.SENT, "First");
        reports.kept(place, month, 2, ReportState.TO_REVIEW, "Second, not out yet");
        Browser viewer = fixture.browser(Role.VIEWER, place.customerId());
        assertThat(viewer.get("/reports/" + first).asString()).doesNotContain("later revision", "Second", "Revision 2");
        assertThat(manager.get("/reports/" + first).asString()).contains("later revision", "Revision 2");
    }

    @Test
    void whatWasSentIsGivenOutAsItIsKept() throws NoSuchAlgorithmException {
        long sent = reports.kept(place, month, 1, ReportState.SENT, "Kept");
        Response pdf = manager.get("/reports/" + sent + "/pdf");
        assertThat(pdf.contentType()).isEqualTo("application/pdf");
        assertThat(pdf.asString()).startsWith("%PDF-").contains(place.customer());
        assertThat(pdf.header("Content-Disposition"))
                .startsWith("attachment; filename=\"")
                .endsWith(".pdf\"");
        Response json = manager.get("/reports/" + sent + "/json");
        assertThat(json.contentType()).startsWith("application/json");
        String hash =
                HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(json.asByteArray()));
        assertThat(places.number("select count(*) from report where figures_sha256 = '" + hash + "' and id = " + sent))
                .isEqualTo(1);
        assertThat(json.jsonPath().getString("subject.customer")).isEqualTo(place.customer());
        for (Response file : List.of(pdf, json)) {
            assertThat(file.header("Cache-Control")).isEqualTo("no-store");
            assertThat(file.header("X-Content-Type-Options")).isEqualTo("nosniff");
        }
    }

    /** Read by a CSV reader that is not ours (RFC 4180), after the byte order mark by which spreadsheets know UTF-8. */
    @Test
    void everyTableIsASheet() throws IOException {
        long report = reports.kept(place, month, 1, ReportState.TO_REVIEW, "");
        String page = manager.get("/reports/" + report).asString();
        Matcher links = Pattern.compile("/reports/" + report + "/tables/([a-z-]+)\\.csv")
                .matcher(page);
        int tables = 0;
        while (links.find()) {
            tables++;
            Response csv = manager.get(links.group());
            assertThat(csv.statusCode()).as(links.group()).isEqualTo(200);
            String text = new String(csv.asByteArray(), StandardCharsets.UTF_8);
            assertThat(text).startsWith("\uFEFF");
            List<CSVRecord> rows = CSVParser.parse(new StringReader(text.substring(1)), CSVFormat.RFC4180)
                    .getRecords();
            assertThat(rows)
                    .as(links.group())
                    .isNotEmpty()
                    .allMatch(row -> row.size() == rows.get(0).size());
        }
        assertThat(tables).isEqualTo(11);
        assertThat(manager.get("/reports/" + report + "/tables/odd.csv").statusCode())
                .isEqualTo(404);
    }

    private String link(long report) {
        Response made = manager.post("/reports/" + report, "/reports/" + report + "/links", Map.of("days", "30"));
        Matcher once = ONCE.matcher(made.asString());
        assertThat(once.find()).as(made.asString()).isTrue();
        return once.group(1).replaceFirst("^https?://[^/]+", "");
    }

    @Test
    void aLinkOpensTheReportWithoutASignInUntilItIsTakenBack() {
        long sent = reports.kept(place, month, 1, ReportState.SENT, "");
        String address = link(sent);
        assertThat(address).matches("/report-link/[A-Za-z0-9_-]{43}");
        Response opened = given().get(address);
        assertThat(opened.statusCode()).isEqualTo(200);
        assertThat(opened.contentType()).isEqualTo("application/pdf");
        assertThat(opened.header("Cache-Control")).isEqualTo("no-store");
        assertThat(opened.header("Content-Disposition")).startsWith("attachment; filename=\"");
        String page = manager.get("/reports/" + sent).asString();
        assertThat(page).as("it is shown once").doesNotContain(address);
        assertThat(page).contains("1 time, last");
        long id = places.number("select max(id) from report_link where report_id = " + sent);
        String revoke = "/reports/" + sent + "/links/" + id + "/revoke";
        assertThat(manager.post("/reports/" + sent, revoke, Map.of()).statusCode())
                .isEqualTo(303);
        Response over = given().get(address);
        Response never = given().get("/report-link/" + "x".repeat(43));
        assertThat(over.statusCode()).isEqualTo(404);
        assertThat(over.asString()).as("no hint of which it is").isEqualTo(never.asString());
        assertThat(never.statusCode()).isEqualTo(404);
        assertThat(over.asString()).doesNotContain(place.customer());
    }

    /** OWASP ASVS 5.0, 2.4.1. */
    @Test
    void linksAreNotOpenedAsOftenAsAnybodyLikes() throws IOException {
        RestAssuredConfig elsewhere = RestAssuredConfig.config()
                .httpClient(HttpClientConfig.httpClientConfig()
                        .setParam("http.route.local-address", InetAddress.getByName("127.0.0.78")));
        Response last = null;
        for (int i = 0; i < 70 && (last == null || last.statusCode() != 429); i++) {
            last = given().config(elsewhere).get("/report-link/guess-" + i);
        }
        assertThat(last.statusCode()).isEqualTo(429);
        assertThat(last.header("Retry-After")).matches("[1-9]\\d?");
        assertThat(given().get("/report-link/guess").statusCode())
                .as("others go on")
                .isEqualTo(404);
    }

    @Test
    void aReportIsRemarkedOnApprovedAndTakenBack() {
        long first = reports.kept(place, month, 1, ReportState.TO_REVIEW, "");
        String page = "/reports/" + first;
        Browser technician = fixture.browser(Role.TECHNICIAN, null);
        Map<String, String> remark = Map.of("was", "", "remark", "A calm month.\r\n\r\nThe line is new.");
        assertThat(technician.post(page, page + "/remark", remark).statusCode()).isEqualTo(303);
        assertThat(technician.post(page, page + "/approve", Map.of()).statusCode())
                .isEqualTo(403);
        assertThat(manager.get(page).asString()).contains("A calm month.\n\nThe line is new.");
        Map<String, String> stale = Map.of("was", "", "remark", "", "then", "");
        assertThat(manager.post(page, page + "/approve", stale).statusCode()).isEqualTo(303);
        assertThat(is("REVIEWED", first)).isTrue();
        assertThat(manager.get(page).asString())
                .as("a page that was left open does not empty the remark")
                .contains("id=\"reopen\"")
                .doesNotContain("id=\"remark\"");
        assertThat(places.number("select count(*) from report where remark like 'A calm month%' and id = " + first))
                .isEqualTo(1);
        Response refused = manager.post(page, page + "/remark", Map.of("was", "", "remark", "Too late"));
        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(refused.asString()).contains("Not done:");
        assertThat(manager.post(page, page + "/reopen", Map.of()).statusCode()).isEqualTo(303);
        assertThat(is("TO_REVIEW", first)).isTrue();
        Map<String, String> look = Map.of("language", "tlh", "paper", "LETTER");
        assertThat(manager.post(page, page + "/look", look).asString()).contains("id=\"language-wrong\"");
    }

    @Test
    void approvingGoesOnWithTheNextOne() {
        FleetFixture.Place other = fixture.place("Saltmarsh");
        reports.kept(other, month, 1, ReportState.TO_REVIEW, "");
        long here = reports.kept(place, month, 1, ReportState.TO_REVIEW, "");
        Response on = manager.post("/reports/" + here, "/reports/" + here + "/approve", Map.of("then", "next"));
        assertThat(on.statusCode()).isEqualTo(303);
        String next = on.header("Location").replaceFirst("^https?://[^/]+", "");
        assertThat(next).matches("/reports/[0-9]+").isNotEqualTo("/reports/" + here);
        assertThat(is("TO_REVIEW", Long.parseLong(next.substring("/reports/".length()))))
                .isTrue();
    }

    @Test
    void theDeskSaysWhatIsMissingAndWhatDidNotArrive() {
        FleetFixture.Place without = fixture.place("Thistledown");
        long failed = reports.kept(place, month, 1, ReportState.SENT, "");
        reports.plan(place.customerId(), true, "office@brook.example");
        reports.mail(failed, "office@brook.example", "BOUNCED", "Mailbox is full");
        String missing = manager.get("/reports?state=missing").asString();
        assertThat(missing)
                .contains(row("build", without), "no recipients", "no plan: built by hand only")
                .doesNotContain(row("open", place));
        assertThat(manager.get("/reports?state=undelivered").asString())
                .contains(row("open", place), "came back", "office@brook.example", "Mailbox is full")
                .doesNotContain(row("build", without));
        assertThat(manager.get("/reports?state=sent&month=" + month).asString()).contains(row("open", place));
        assertThat(manager.get("/reports?state=failed&month=" + month).asString())
                .doesNotContain(row("open", place));
    }

    private static String row(String what, FleetFixture.Place of) {
        return "id=\"" + what + "-" + of.customerId() + "\"";
    }

    @Test
    void whatCannotBeBuiltIsRefusedWithWords() {
        Response noMonth = manager.post("/reports", "/reports/build-all", Map.of());
        assertThat(noMonth.statusCode()).isEqualTo(422);
        assertThat(noMonth.asString()).contains("Nothing was done: choose a month.");
        String customer = String.valueOf(place.customerId());
        Response future = manager.post(
                "/reports",
                "/reports/build",
                Map.of("customer", customer, "month", month.plusMonths(2).toString()));
        assertThat(future.statusCode()).isEqualTo(422);
        assertThat(future.asString()).contains("role=\"alert\"");
        Response days = manager.post(
                "/reports",
                "/reports/build-days",
                Map.of("customer", customer, "from", "2026-10-09", "last", "2026-10-02"));
        assertThat(days.statusCode()).isEqualTo(422);
        assertThat(days.asString()).contains("id=\"last-wrong\"").contains("value=\"2026-10-09\"");
        assertThat(manager.post("/reports", "/reports/build", Map.of("customer", "999999999", "month", "2026-01"))
                        .statusCode())
                .isEqualTo(404);
    }

    @Test
    void aMonthIsPutIntoTheQueueFromTheDesk() {
        Map<String, String> wanted = Map.of("customer", String.valueOf(place.customerId()), "month", month.toString());
        Response built = manager.post("/reports", "/reports/build", wanted);
        assertThat(built.statusCode()).isEqualTo(303);
        assertThat(built.header("Location")).endsWith("/reports?month=" + month);
        long queued = places.number("select id from report where customer_id = " + place.customerId());
        assertThat(manager.get("/reports/" + queued).asString())
                .contains("waiting")
                .contains("hx-get=\"/reports/" + queued + "/progress\"");
        assertThat(manager.get("/reports/" + queued + "/progress").header("HX-Refresh"))
                .isNull();
        reports.built(queued, place);
        assertThat(manager.get("/reports/" + queued + "/progress").header("HX-Refresh"))
                .isEqualTo("true");
    }

    @Test
    void aPlanIsKeptAndEachWrongFieldIsNamed() {
        String page = "/reports/plans/" + place.customerId();
        Map<String, String> plan = Map.of(
                "active", "yes",
                "day", "2",
                "hour", "7",
                "zone", "Europe/Berlin",
                "language", "en",
                "paper", "LETTER",
                "recipients", "a@brook.example\r\nb@brook.example; A@brook.example",
                "approval", "yes",
                "keepMonths", "36");
        assertThat(manager.post(page, page, plan).statusCode()).isEqualTo(303);
        String kept = manager.get(page).asString();
        assertThat(kept).contains(">a@brook.example\nb@brook.example<").contains("value=\"36\"");
        Map<String, String> wrong = new HashMap<>(plan);
        wrong.putAll(Map.of("day", "31", "zone", "Moon", "recipients", "nobody", "keepMonths", "x"));
        Response refused = manager.post(page, page, wrong);
        assertThat(refused.statusCode()).isEqualTo(422);
        for (String field : List.of("day", "zone", "recipients", "keepMonths")) {
            assertThat(refused.asString()).contains("id=\"" + field + "-wrong\"");
        }
        assertThat(manager.get("/reports/plans").asString()).contains("day 2, 07:00 Europe/Berlin");
    }

    private Response look(byte[] logo) {
        String page = "/reports/look/" + place.customerId();
        return manager.request()
                .multiPart("anti-forgery", manager.token(page))
                .multiPart("name", "Brook & Sons")
                .multiPart("colour", "#0B5D5B")
                .multiPart("lines", "1 Quay\r\n\r\noffice@brook.example")
                .multiPart("logo", "logo.png", logo, "image/png")
                .post(page);
    }

    /** Written by the platform's own writer of PNG. */
    private static byte[] png() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(40, 20, BufferedImage.TYPE_INT_RGB), "png", out);
        return out.toByteArray();
    }

    /** OWASP ASVS 5.0: 5.2.1 and 5.2.2. */
    @Test
    void aLogoIsTakenByItsOctetsAndUpToItsSize() throws IOException {
        assertThat(look(png()).statusCode()).isEqualTo(303);
        String page = manager.get("/reports/look/" + place.customerId()).asString();
        assertThat(page).contains("src=\"data:image/png;base64,iVBORw0KGgo", "Brook &amp; Sons", "#0b5d5b");
        assertThat(look("<svg/>".getBytes(StandardCharsets.US_ASCII)).asString())
                .contains("id=\"logo-wrong\"");
        assertThat(look(new byte[257 * 1024]).asString()).contains("larger than 256 KB");
        Response huge = look(new byte[400 * 1024]);
        assertThat(huge.statusCode()).isEqualTo(413);
        assertThat(huge.statusLine())
                .as("the test sends it in chunks, so that there is only this line to say it in")
                .contains("Larger than 256 KB");
        assertThat(manager.get("/reports/look/" + place.customerId()).asString())
                .contains("iVBORw0KGgo");
    }

    @Test
    void aMailThatCameBackIsNotedWithItsReason() {
        long sent = reports.kept(place, month, 1, ReportState.SENT, "");
        long mail = reports.mail(sent, "office@brook.example", "SENT", "");
        String note = "/reports/" + sent + "/mails/" + mail + "/bounced";
        assertThat(manager.post("/reports/" + sent, note, Map.of()).statusCode())
                .isEqualTo(422);
        assertThat(manager.post("/reports/" + sent, note, Map.of("why", "No such mailbox"))
                        .statusCode())
                .isEqualTo(303);
        assertThat(manager.get("/reports/" + sent).asString()).contains("came back", "No such mailbox");
        long other = reports.kept(place, month.minusMonths(1), 1, ReportState.SENT, "");
        assertThat(manager.post("/reports/" + sent, "/reports/" + other + "/mails/" + mail + "/bounced", Map.of())
                        .statusCode())
                .isEqualTo(404);
    }

    @Test
    void anAccountManagerBeginsWithTheReports() {
        Browser browser = Browser.of(fixture.person(Role.TECHNICIAN, null), FleetFixture.PASSWORD);
        Response signedIn = browser.signIn(fixture.person(Role.ACCOUNT_MANAGER, null), FleetFixture.PASSWORD);
        assertThat(signedIn.header("Location")).endsWith("/reports");
    }

    @Test
    void anOddAddressStillShowsThePage() {
        for (String odd : List.of(
                "/reports?month=x&state=y",
                "/reports?month=9999-12",
                "/reports/progress?month=-1",
                "/reports/archive?customer=x&month=2026-13&state=z&page=-1",
                "/reports/archive?page=999999")) {
            assertThat(manager.get(odd).statusCode()).as(odd).isEqualTo(200);
        }
    }
}
