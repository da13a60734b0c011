package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.people.Role;
import org.roundsman.polling.ReadingSink;
import org.roundsman.readings.DeviceHistory;

/** The visit sheet, read back out of its PDF by Debian's poppler tools. */
@QuarkusTest
class VisitSheetDbTest {

    private static final Path FOLDER = Path.of("target/screens");

    @Inject
    AlarmHouse houses;

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Inject
    ReadingSink sink;

    @Inject
    DeviceHistory history;

    @Inject
    Clock clock;

    private AlarmHouse.House house;
    private Browser technician;

    @BeforeEach
    void aHouse() {
        houses.clearAll();
        house = houses.house("Brackwater");
        technician = fixture.browser(Role.TECHNICIAN, null);
    }

    private void read(long device) {
        places.tell(
                "insert into device_fact (device_id, fact, value, since) values (?, 'SERIAL', 'TR22-00417', now()),"
                        + " (?, 'BASE_MAC', '02:00:5e:00:57:12', now()), (?, 'FIRMWARE', '4.2.1', now())",
                device,
                device,
                device);
        Values unit = Values.builder(Subject.DEVICE)
                .set(Metric.CLIENTS, 12)
                .set(Metric.UPTIME, 7_200)
                .build();
        Values radio = Values.builder(Subject.RADIO)
                .set(Metric.BAND, 5)
                .set(Metric.CHANNEL, 36)
                .set(Metric.TX_POWER, 17)
                .set(Metric.UTILISATION, 34)
                .build();
        sink.accept(new Reading(
                device,
                clock.instant().minus(Duration.ofMinutes(6)),
                Outcome.ANSWERED,
                60,
                unit,
                List.of(new RadioReading(1, radio)),
                List.of(),
                Optional.empty()));
        Awaitility.await().until(() -> history.lastAnswered(device).isPresent());
    }

    private Path pdf(long alarm, String name) throws IOException {
        Response answer = technician.get("/triage/visit/" + alarm + "/sheet.pdf");
        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.contentType()).startsWith("application/pdf");
        Files.createDirectories(FOLDER);
        Path file = FOLDER.resolve(name);
        Files.write(file, answer.asByteArray());
        return file;
    }

    private static String run(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        try (InputStream out = process.getInputStream()) {
            String text = new String(out.readAllBytes(), StandardCharsets.UTF_8);
            assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
            assertThat(process.exitValue()).as(text).isZero();
            return text;
        }
    }

    private static String text(Path pdf) throws IOException, InterruptedException {
        return run("pdftotext", "-raw", pdf.toString(), "-").replaceAll("[\\s\u00a0]+", " ");
    }

    @Test
    void theSheetOfAnAccessPointSaysWhatToKnowAndBring() throws IOException, InterruptedException {
        read(house.points().get(1));
        long alarm = houses.portOff(house, 1, 12);
        technician.post("/password", "/triage/alarms/" + alarm + "/note", Map.of("text", "Called: <the> rack & hums"));
        String text = text(pdf(alarm, "visit-access-point.pdf"));
        assertThat(text)
                .contains("Switch port delivers no power: " + house.site())
                .contains("3 Lantern Street, 12345 Saltmarsh, DE")
                .contains("Key at the reception")
                .contains("Mon 08:00-18:00")
                .contains("Ottoline Brisk")
                .contains("+49 000 4711")
                .contains("ap-2")
                .contains("ceiling of floor 2")
                .contains("Tamarack Radio TR-22H, indoor, internal antenna")
                .contains("TR22-00417")
                .contains("02:00:5e:00:57:12")
                .contains("4.2.1")
                .contains("2 of sw-1")
                .contains("power delivered, class 4")
                .contains("channel 36")
                .contains("17 dBm")
                .contains("Port 2 of sw-1 delivers no power.")
                .contains("about 12 people would be online now")
                .contains("Spare: one Tamarack Radio TR-22H.")
                .contains("PoE class 4 (IEEE 802.3at)")
                .contains("Ladder: the place is “ceiling of floor 2”.")
                .contains("Called: <the> rack & hums")
                .contains("Working at height")
                .contains("licensed electrician")
                .contains("local regulator")
                .contains("Page 1 of");
    }

    @Test
    void theSheetOfASiteNamesItsGatewayAndEverythingBehindIt() throws IOException, InterruptedException {
        long alarm = houses.uplinkLost(house);
        String text = text(pdf(alarm, "visit-site.pdf"));
        assertThat(text)
                .contains("Uplink or gateway lost: " + house.site())
                .contains("gw, gateway")
                .contains("It has never answered")
                .contains("Also concerned")
                .contains("ap-3")
                .contains("ceiling of floor 3")
                .contains("100 Mb/s down, 40 Mb/s up");
    }

    @Test
    void aGatewayHangsOnTheLineAndEvidenceThatNoLongerHoldsIsOfThePast() {
        long alarm = houses.uplinkLost(house);
        String at = "/triage/visit/" + alarm;
        assertThat(technician.get(at).asString())
                .contains("<th scope=\"row\">Hangs on</th><td>the line</td>")
                .contains("<h3>Evidence</h3>", "Next step");
        houses.over(alarm);
        assertThat(technician.get(at).asString())
                .contains("Evidence, as it was when the cause was found", "It is over: the alarm has cleared.")
                .contains("would have been online")
                .doesNotContain("Next step", "would be online now");
    }

    @Test
    void whatWorksAgainDoesNotStandBesideItsFault() {
        assertThat(technician.get("/triage/visit/" + houses.portBack(house, 1)).asString())
                .contains("<h3>Evidence, as it was when the cause was found</h3>")
                .contains("So it has no power, or its cable is out.</li></ol>")
                .contains("<h3>What changed after that</h3><p>The port works again since");
    }

    @Test
    void itIsAtMostTwoPagesWithEveryFontInside() throws IOException, InterruptedException {
        read(house.points().get(1));
        for (Path pdf : List.of(
                pdf(houses.uplinkLost(house), "visit-site.pdf"),
                pdf(houses.portOff(house, 1, 12), "visit-access-point.pdf"))) {
            String info = run("pdfinfo", pdf.toString());
            assertThat(info.replaceAll("(?s).*Pages:\\s+(\\d+).*", "$1")).isIn("1", "2");
            assertThat(info).contains("A4").contains("Title:").containsPattern("Tagged:\\s+yes");
            List<String> fonts = run("pdffonts", pdf.toString()).lines().skip(2).toList();
            assertThat(fonts).isNotEmpty().allMatch(line -> line.contains("Figtree"));
            assertThat(fonts).allMatch(line -> line.matches(".*\\s+yes\\s+yes\\s+(yes|no)\\s+\\d+\\s+\\d+\\s*"));
        }
    }

    @Test
    void itIsForTheFirmsOwnPeopleAndOnlyWhereThereIsSomewhereToDrive() {
        long alarm = houses.portOff(house, 0, 3);
        String at = "/triage/visit/" + alarm;
        assertThat(fixture.browser(Role.ACCOUNT_MANAGER, null).get(at).statusCode())
                .isEqualTo(200);
        Browser viewer = fixture.browser(Role.VIEWER, house.customerId());
        assertThat(viewer.get(at).statusCode()).isEqualTo(403);
        assertThat(viewer.get(at + "/sheet.pdf").statusCode()).isEqualTo(403);
        assertThat(technician.get("/triage/visit/999999999").statusCode()).isEqualTo(404);
        assertThat(technician.get("/triage/visit/999999999/sheet.pdf").statusCode())
                .isEqualTo(404);
    }
}
