package org.roundsman.claims;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmDesk;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.claims.ReplacementDraft.Old;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.measure.Condition;
import org.roundsman.readings.HistoryLoad;
import org.roundsman.web.FleetFixture;
import org.roundsman.web.MarkedPlaces;

/** Claims in the database: what is kept, who may see it, and what the audit says. */
@QuarkusTest
class ClaimsDbTest {

    private static final CustomerScope ALL = CustomerScope.everyone();

    @Inject
    FleetFixture fleet;

    @Inject
    UnitsFixture fixture;

    @Inject
    Claims claims;

    @Inject
    ClaimBook book;

    @Inject
    Replacements replacements;

    @Inject
    Spares spares;

    @Inject
    HistoryLoad load;

    @Inject
    AlarmDesk alarms;

    @Inject
    MarkedPlaces tables;

    @Inject
    Clock clock;

    private final String serial = UnitsFixture.serial();
    private FleetFixture.Place place;
    private Instant now;

    @BeforeEach
    void aDevice() {
        place = fleet.place("Saltmarsh");
        now = clock.instant().truncatedTo(ChronoUnit.HOURS);
        fixture.says(place.deviceId(), place.siteId(), now.minus(Duration.ofDays(3)), serial);
        fixture.follow();
    }

    private ClaimDraft draft(String fault) {
        return new ClaimDraft(place.deviceId(), null, null, "", fault, "Tamarack Radio");
    }

    private static Map<String, String> refused(Runnable work) {
        return catchThrowableOfType(InputRejected.class, work::run).faults();
    }

    @Test
    void aClaimKeepsWhatTheReadingsSaidWhenItWasOpened() {
        load.load(
                List.of(),
                List.of(
                        new HistoryLoad.PastSpan(
                                place.deviceId(),
                                now.minus(Duration.ofHours(48)),
                                now.minus(Duration.ofHours(12)),
                                Condition.ANSWERING),
                        new HistoryLoad.PastSpan(
                                place.deviceId(), now.minus(Duration.ofHours(12)), now, Condition.SILENT)));
        AlarmKey key = AlarmKey.of(AlarmType.RADIO_OFF, Resource.radio(place.deviceId(), 2));
        alarms.accept(List.of(new Signal.Raise(
                key,
                Severity.MAJOR,
                now.minus(Duration.ofHours(13)),
                now.minus(Duration.ofHours(13)),
                "Radio 2 is off.")));
        Claim claim = claims.open(ALL, draft("Dead after a storm"));
        List<String> failure = claim.known().failure();
        assertThat(failure)
                .contains(
                        "Availability: 75.00 % of the time that counts, silent for 12 h 0 min; not watched for 1 day 0 h."
                                .replace("not watched for 1 day 0 h.", notWatched(failure)))
                .contains("Silent once:")
                .anyMatch(line -> line.contains("Radio off (radio 2)") && line.contains("goes on"));
        alarms.accept(List.of(new Signal.Clear(key, now, "on again")));
        tables.tell("delete from span where device_id = " + place.deviceId());
        assertThat(book.find(ALL, claim.id()).orElseThrow().known().failure()).isEqualTo(failure);
        assertThat(claim.known().place()).contains("Pier AP of").contains("mast");
    }

    /** How long nobody looked depends on the minute of the hour at which the test runs. */
    private static String notWatched(List<String> failure) {
        String line = failure.stream()
                .filter(one -> one.startsWith("Availability"))
                .findFirst()
                .orElseThrow();
        return line.substring(line.indexOf("not watched"));
    }

    @Test
    void aUnitHasOneClaimAtATimeAndIllegalMovesAreRefusedInWords() {
        Claim claim = claims.open(ALL, draft("Dead"));
        assertThat(refused(() -> claims.open(ALL, draft("Dead again"))).get("unit"))
                .isEqualTo("claim " + claim.id() + " of this unit is opened and not closed yet");
        assertThat(refused(() -> claims.move(ALL, claim.id(), ClaimState.REPLACED, ""))
                        .get("state"))
                .isEqualTo("a claim that is opened cannot become replaced; it can become sent, or refused, or closed");
        claims.move(ALL, claim.id(), ClaimState.SENT, "by parcel");
        claims.move(ALL, claim.id(), ClaimState.REFUSED, "water inside");
        claims.move(ALL, claim.id(), ClaimState.SENT, "with the photograph");
        claims.move(ALL, claim.id(), ClaimState.REPLACED, "");
        claims.move(ALL, claim.id(), ClaimState.CLOSED, "");
        assertThat(book.changes(ALL, claim.id()))
                .extracting(change -> change.to().word() + " " + change.note())
                .containsExactly(
                        "closed ",
                        "replaced ",
                        "sent with the photograph",
                        "refused water inside",
                        "sent by parcel",
                        "opened ");
        assertThat(claims.open(ALL, draft("Dead once more")).id()).isGreaterThan(claim.id());
        assertThat(tables.number("select count(*) from audit_entry where subject = 'claim' and subject_id = "
                        + claim.id() + " and customer_id = " + place.customerId()))
                .isEqualTo(6);
    }

    @Test
    void aReplacementFromAClaimStandsInItAndPapersAreChecked() {
        Claim claim = claims.open(ALL, draft("Dead"));
        String fresh = UnitsFixture.serial();
        replacements.announce(
                ALL,
                new ReplacementDraft(
                        place.deviceId(), null, fresh, null, null, Old.SENT_BACK, null, null, "", claim.id()));
        assertThat(book.find(ALL, claim.id()).orElseThrow().newSerial()).isEqualTo(fresh);
        assertThat(book.find(ALL, claim.id()).orElseThrow().state()).isEqualTo(ClaimState.OPENED);
        Claim after = claims.papers(
                ALL,
                claim.id(),
                new Claim.Papers("Tamarack Radio", "R-7", Optional.of(LocalDate.of(2026, 3, 29)), "Parcel 1"));
        assertThat(after.papers().reference()).isEqualTo("R-7");
        Claim.Papers late =
                new Claim.Papers("", "", Optional.of(LocalDate.now(clock).plusYears(1)), "");
        assertThat(refused(() -> claims.papers(ALL, claim.id(), late))).containsKey("shippedOn");
        replacements.withdraw(ALL, place.deviceId());
        assertThat(book.find(ALL, claim.id()).orElseThrow().newUnitId()).isEmpty();
    }

    @Test
    void aDeviceThatTellsNoSerialNumberTakesOneByHand() {
        long mute = fleet.device(place.siteId(), place.credentialId(), "mute", "127.99.0.8", 16_099);
        ClaimDraft none = new ClaimDraft(mute, null, null, "", "Dead", "");
        assertThat(refused(() -> claims.open(ALL, none))).containsKey("serial");
        String read = UnitsFixture.serial();
        Claim claim = claims.open(ALL, new ClaimDraft(mute, null, null, read, "Dead", ""));
        assertThat(claim.known().serial()).isEqualTo(read);
        fixture.says(mute, place.siteId(), clock.instant().plusSeconds(60), "other-" + read);
        fixture.follow();
        assertThat(tables.number("select count(*) from unit_stay where device_id = " + mute))
                .isEqualTo(2);
    }

    @Test
    void aSpareThatIsReadFromTheUnitInAPlaceLiesInStoreNoMore() {
        long mute = fleet.device(place.siteId(), place.credentialId(), "mute", "127.99.0.8", 16_099);
        String read = UnitsFixture.serial();
        Spare spare = spares.add(ALL, new SpareDraft(read, null, null, place.siteId(), ""));
        claims.open(ALL, new ClaimDraft(mute, null, null, read, "Dead", ""));
        assertThat(spares.find(ALL, spare.id()).orElseThrow().leftAt()).isPresent();
        assertThat(tables.number("select count(*) from audit_entry where subject = 'spare' and action = 'changed' and"
                        + " subject_id = " + spare.id()))
                .isEqualTo(1);
        assertThat(tables.number("select count(*) from audit_entry where subject = 'unit in place' and action ="
                        + " 'entered' and subject_id = " + mute))
                .isEqualTo(1);
    }

    @Test
    void claimsOfOthersAreNotSeenAndNotMoved() {
        Claim claim = claims.open(ALL, draft("Dead"));
        CustomerScope stranger = CustomerScope.of(fleet.place("Orrin").customerId());
        assertThat(book.find(stranger, claim.id())).isEmpty();
        assertThat(book.after(stranger, Optional.empty(), 0, 500)).isEmpty();
        assertThat(refused(() -> claims.move(stranger, claim.id(), ClaimState.SENT, "")))
                .containsKey("id");
        assertThat(refused(() -> claims.open(stranger, draft("Dead")))).containsKey("device");
        ClaimSearch own =
                new ClaimSearch(Optional.of(ClaimState.OPENED), true, OptionalLong.of(place.customerId()), 1, 50);
        assertThat(book.search(ALL, own).items()).extracting(Claim::id).containsExactly(claim.id());
    }

    @Test
    void theCsvReadsBackAndHoldsNoFormula() throws IOException {
        Claim claim = claims.open(ALL, draft("=1+1, \"quoted\"\nsecond line"));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ClaimsCsv.claims((id, most) -> id < claim.id() ? List.of(claim) : List.of(), out);
        String text = out.toString(StandardCharsets.UTF_8);
        assertThat(text).startsWith("\uFEFFclaim,state,");
        List<CSVRecord> rows = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(text.substring(1)))
                .getRecords();
        assertThat(rows).hasSize(1);
        assertThat(rows.get(0).get("fault")).isEqualTo("'=1+1, \"quoted\"\nsecond line");
        assertThat(rows.get(0).get("serial")).isEqualTo(serial);
    }
}
