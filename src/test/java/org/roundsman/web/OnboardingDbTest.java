package org.roundsman.web;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.InputStreamReader;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.people.Role;

/** Import and export through the pages. Numbers of requirements are those of OWASP ASVS 5.0. */
@QuarkusTest
class OnboardingDbTest {

    private static final int UPLOAD_LIMIT = 33 * 1024 * 1024;

    @TestHTTPResource("/")
    URI address;

    @Inject
    FleetFixture fixture;

    @ConfigProperty(name = "quarkus.http.body.uploads-directory")
    Path uploads;

    private FleetFixture.Place place;
    private Browser browser;

    @BeforeEach
    void place() {
        place = fixture.place("Saltmarsh");
        browser = fixture.browser(Role.TECHNICIAN, null);
    }

    private Response upload(String name, byte[] content, String windows) {
        RequestSpecification form = browser.request().multiPart("anti-forgery", browser.token("/onboarding"));
        return form.multiPart("files", name, content, "text/csv")
                .multiPart("windows", windows)
                .post("/onboarding/imports");
    }

    private String devices(String device) {
        return "customer,site,device,kind,host,credentials\r\n\"" + place.customer() + "\",\"Pier of "
                + place.customer() + "\"," + device + ",access point,gangway.example,\"pier keys " + place.customer()
                + "\"\r\n";
    }

    private static String path(Response answer) {
        return answer.header("Location").replaceFirst("^https?://[^/]+", "");
    }

    private String ended(String path) {
        return await().atMost(Duration.ofSeconds(30))
                .until(() -> browser.get(path).asString(), page -> !page.contains("id=\"progress\""));
    }

    @ParameterizedTest
    @EnumSource(names = {"TECHNICIAN", "ACCOUNT_MANAGER", "OWNER"})
    void theFirmsOwnPeopleImport(Role role) {
        browser = fixture.browser(role, null);
        Response answer = upload("devices.csv", devices("Gangway").getBytes(UTF_8), "no");
        assertThat(answer.statusCode()).isEqualTo(303);
        String dryRun = ended(path(answer));
        assertThat(dryRun)
                .contains("nothing is written yet")
                .contains("Gangway")
                .contains("Write 1 new row");
        assertThat(browser.get("/sites/" + place.siteId()).asString()).doesNotContain("Gangway");
        assertThat(browser.post(path(answer), path(answer) + "/apply", Map.of()).statusCode())
                .isEqualTo(303);
        assertThat(ended(path(answer))).contains("All of it is written");
        assertThat(browser.get("/sites/" + place.siteId()).asString()).contains("Gangway");
        assertThat(browser.post("/onboarding", path(answer) + "/apply", Map.of())
                        .statusCode())
                .isEqualTo(409);
    }

    /** 8.2.1: what a viewer must not do, also with a form of their own making. */
    @Test
    void aViewerMayNothingOfIt() {
        browser = fixture.browser(Role.VIEWER, place.customerId());
        for (String path : List.of(
                "/onboarding",
                "/onboarding/export?table=devices",
                "/onboarding/templates/sites",
                "/onboarding/imports/1")) {
            assertThat(browser.get(path).statusCode()).as(path).isEqualTo(403);
        }
        Response answer = browser.request()
                .multiPart("anti-forgery", browser.token("/password"))
                .multiPart("files", "devices.csv", devices("Gangway").getBytes(UTF_8), "text/csv")
                .post("/onboarding/imports");
        assertThat(answer.statusCode()).isEqualTo(403);
    }

    /** 8.2.2: the dry run of somebody else. */
    @Test
    void anImportIsItsMakersOwn() {
        String path = path(upload("devices.csv", devices("Gangway").getBytes(UTF_8), "no"));
        Browser other = fixture.browser(Role.OWNER, null);
        assertThat(other.get(path).statusCode()).isEqualTo(404);
        for (String act : List.of("/apply", "/check", "/discard")) {
            assertThat(other.post("/onboarding", path + act, Map.of()).statusCode())
                    .as(act)
                    .isEqualTo(404);
        }
    }

    /** 5.3.2. */
    @Test
    void aNameWithAPathStaysAName() throws Exception {
        Path escaped =
                uploads.toAbsolutePath().normalize().getParent().getParent().resolve("x");
        Response answer = upload("../../x", devices("Gangway").getBytes(UTF_8), "no");
        assertThat(answer.statusCode()).isEqualTo(303);
        assertThat(ended(path(answer))).contains("x: read as devices").doesNotContain("../");
        assertThat(escaped).doesNotExist();
        await().atMost(Duration.ofSeconds(20)).until(() -> files(uploads) == 0);
    }

    private static long files(Path folder) throws java.io.IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.count();
        }
    }

    @Test
    void aFaultOfAFileIsNamedAndNothingIsKept() {
        Response answer = upload("mine.csv", "customer,site,timezone\r\nA,B,C\r\n".getBytes(UTF_8), "no");
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.asString())
                .contains("mine.csv")
                .contains("is time_zone meant?")
                .contains("role=\"alert\"");
        Response nothing = upload("", new byte[0], "no");
        assertThat(nothing.statusCode()).isEqualTo(422);
        assertThat(nothing.asString()).contains("No file was chosen");
    }

    @Test
    void windowsTextIsReadOnlyWhenSomebodySaysSo() {
        byte[] western = devices("Br\u00fccke").getBytes(ISO_8859_1);
        Response refused = upload("devices.csv", western, "no");
        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(refused.asString()).contains("Line 2 is not UTF-8");
        Response taken = upload("devices.csv", western, "yes");
        assertThat(taken.statusCode()).isEqualTo(303);
        assertThat(ended(path(taken))).contains("Br\u00fccke").contains("Windows-1252, as chosen");
    }

    @ParameterizedTest
    @ValueSource(strings = {"customers", "sites", "devices", "purchases"})
    void tablesAndTemplatesAreFiles(String table) {
        Response template = browser.get("/onboarding/templates/" + table);
        assertThat(template.header("Content-Disposition"))
                .isEqualTo("attachment; filename=\"" + table + "-template.csv\"");
        assertThat(template.header("Content-Type")).startsWith("text/csv").contains("charset=utf-8");
        Response export = browser.get("/onboarding/export?table=" + table + "&customer=" + place.customerId());
        assertThat(export.statusCode()).isEqualTo(200);
        assertThat(export.header("Content-Disposition"))
                .endsWith("-" + table + ".csv\"")
                .contains("saltmarsh-");
        String text = new String(export.asByteArray(), UTF_8);
        assertThat(text).startsWith("\uFEFFcustomer,");
        if (!table.equals("purchases")) {
            assertThat(text).contains(place.customer());
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/onboarding/export?table=secrets",
                "/onboarding/export",
                "/onboarding/export?table=sites&customer=x",
                "/onboarding/export?table=sites&customer=999999999",
                "/onboarding/templates/x",
                "/onboarding/imports/999999999",
                "/onboarding/imports/x"
            })
    void whatIsNotThereIsNotFound(String path) {
        assertThat(browser.get(path).statusCode()).isEqualTo(404);
    }

    /** 5.2.1. */
    @Test
    void anUploadThatIsTooLargeIsRefusedByItsHead() throws Exception {
        HttpResponse<String> answer =
                send("/onboarding/imports", "multipart/form-data; boundary=x", UPLOAD_LIMIT + 1, false);
        assertThat(answer.statusCode()).isEqualTo(413);
        assertThat(answer.body()).contains("larger than 32 MB").contains("in parts");
    }

    /** 5.2.1, in chunks: the head does not tell the length. */
    @Test
    void anUploadThatIsTooLargeIsRefusedInChunksToo() throws Exception {
        HttpResponse<String> answer =
                send("/onboarding/imports", "multipart/form-data; boundary=x", UPLOAD_LIMIT + 1, true);
        assertThat(answer.statusCode()).isEqualTo(413);
    }

    @Test
    void otherAddressesTakeSmallBodiesOnly() throws Exception {
        String form = "application/x-www-form-urlencoded";
        HttpResponse<String> told = send("/customers", form, 256 * 1024 + 1, false);
        assertThat(told.statusCode()).isEqualTo(413);
        assertThat(told.body()).contains("larger than 256 KB");
        assertThat(send("/customers", form, 300 * 1024, true).statusCode()).isEqualTo(413);
        assertThat(statusLineOfChunks("/customers", form, 300 * 1024))
                .startsWith("HTTP/1.1 413 ")
                .contains("Larger than 256 KB");
        HttpResponse<String> parts = send("/customers", "multipart/form-data; boundary=x", 300 * 1024, true);
        assertThat(parts.statusCode()).isEqualTo(413);
        assertThat(send("/customers", form, 1024, true).statusCode()).isEqualTo(400);
    }

    /** The client of the JDK does not tell the words of a status line. */
    private String statusLineOfChunks(String path, String type, int length) throws Exception {
        try (Socket socket = new Socket(address.getHost(), address.getPort())) {
            String head = "POST " + path + " HTTP/1.1\r\nHost: " + address.getAuthority() + "\r\nContent-Type: " + type
                    + "\r\nCookie: " + browser.cookieHeader() + "\r\nTransfer-Encoding: chunked\r\n\r\n"
                    + Integer.toHexString(length) + "\r\nname=" + "a".repeat(length - 5) + "\r\n0\r\n\r\n";
            socket.getOutputStream().write(head.getBytes(UTF_8));
            return new BufferedReader(new InputStreamReader(socket.getInputStream(), UTF_8)).readLine();
        }
    }

    private HttpResponse<String> send(String path, String type, int length, boolean chunked) throws Exception {
        byte[] body = new byte[length];
        java.util.Arrays.fill(body, (byte) 'a');
        byte[] head = type.startsWith("multipart")
                ? "--x\r\nContent-Disposition: form-data; name=\"files\"; filename=\"big.csv\"\r\n\r\n".getBytes(UTF_8)
                : "name=".getBytes(UTF_8);
        System.arraycopy(head, 0, body, 0, head.length);
        HttpRequest.BodyPublisher publisher = chunked
                ? HttpRequest.BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(body))
                : HttpRequest.BodyPublishers.ofByteArray(body);
        HttpRequest request = HttpRequest.newBuilder(address.resolve(path))
                .version(HttpClient.Version.HTTP_1_1)
                .header("Content-Type", type)
                .header("Cookie", browser.cookieHeader())
                .timeout(Duration.ofSeconds(60))
                .POST(publisher)
                .build();
        return HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
    }
}
