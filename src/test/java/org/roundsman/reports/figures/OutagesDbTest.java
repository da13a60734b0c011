package org.roundsman.reports.figures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.roundsman.reports.figures.PastOfSite.at;

import java.time.Duration;
import java.time.Instant;
import java.time.YearMonth;
import java.util.List;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.measure.Condition;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.reports.Handling;
import org.roundsman.reports.Outage;
import org.roundsman.reports.Outage.Cause;
import org.roundsman.reports.ReportSubject;
import org.roundsman.reports.WorkDone;
import org.roundsman.testing.TestDatabase;

/** Outages, alarms and work of an invented site in June 2026, as rows; what follows was worked out by hand. */
class OutagesDbTest {

    private static final Instant LATER = at("2026-07-02T06:00");

    private static DataSource database;

    private PastOfSite past;
    private long one;
    private long two;

    @BeforeAll
    static void open() {
        database = TestDatabase.fresh("report_outages");
        new ReadingsFixture(database).run("create table quarter_device_all partition of quarter_device default");
        new ReadingsFixture(database).run("create table quarter_network_all partition of quarter_network default");
    }

    @BeforeEach
    void aSite() {
        past = new PastOfSite(database);
        one = past.device("ap-desk", "ACCESS_POINT");
        two = past.device("ap-hall", "ACCESS_POINT");
    }

    private ReportSubject june() {
        return ReportSubject.of(past.customer, past.name, YearMonth.of(2026, 6));
    }

    private List<Outage> outages() {
        return past.outages(june(), LATER);
    }

    private Handling handling() {
        return Dealings.of(june(), LATER, past.events(june(), LATER).episodes());
    }

    private WorkDone work() {
        List<SitePeriod> sites =
                past.times(june(), LATER).stream().map(SiteTimes::site).toList();
        return new Doings(june(), LATER).of(sites, past.events(june(), LATER));
    }

    /** 20 people on one and 10 on the other: 60 min of 20, and 30 min of 10. */
    @Test
    void aLostUplinkIsOneOutageWithItsPeople() {
        past.usually(one, "2026-06-10T10:00", 1, 20);
        past.usually(two, "2026-06-10T10:00", 1, 10);
        past.silent(one, "2026-06-10T10:00", "2026-06-10T11:00");
        past.silent(two, "2026-06-10T10:00", "2026-06-10T10:30");
        long uplink = past.episode("uplink-lost", null, "2026-06-10T10:00", "2026-06-10T11:00", "UPLINK_LOST", null);
        past.affects(uplink, one);
        past.affects(uplink, two);
        past.episode("device-silent", one, "2026-06-10T10:00", "2026-06-10T11:00", "UPLINK_LOST", uplink);
        past.act(uplink, "2026-06-10T10:10", "TAKE");
        past.act(uplink, "2026-06-10T10:07", "ACK");
        past.act(uplink, "2026-06-10T10:01", "NOTE");
        assertThat(outages()).hasSize(1);
        Outage outage = outages().get(0);
        assertThat(outage.cause()).isEqualTo(Cause.UPLINK);
        assertThat(outage.what()).isEqualTo("Mill Lane");
        assertThat(outage.from()).isEqualTo(at("2026-06-10T10:00"));
        assertThat(outage.to()).isEqualTo(at("2026-06-10T11:00"));
        assertThat(outage.accessPoints()).isEqualTo(2);
        assertThat(outage.wholeSite()).isTrue();
        assertThat(outage.silence()).isEqualTo(Duration.ofMinutes(90));
        assertThat(outage.people()).hasValue(30);
        assertThat(outage.personMinutes()).hasValue(60 * 20 + 30 * 10);
        assertThat(outage.noticed()).hasValue(at("2026-06-10T10:02"));
        assertThat(outage.taken()).hasValue(at("2026-06-10T10:07"));
        assertThat(outage.replaced()).isFalse();
        assertThat(outage.alarmId()).isPresent();
    }

    /** It rejects our credentials: whether it served anybody meanwhile is not known. */
    @Test
    void oneThatCannotBeReadDoesNotMakeAWholeSiteAPartOfIt() {
        past.silent(one, "2026-06-10T10:00", "2026-06-10T11:00");
        past.span(two, "2026-06-01T00:00", "2026-06-30T00:00", Condition.REFUSING);
        assertThat(outages()).singleElement().satisfies(outage -> {
            assertThat(outage.accessPoints()).isEqualTo(1);
            assertThat(outage.wholeSite()).isTrue();
        });
    }

    @Test
    void aDeadDeviceThatWasReplacedSaysSo() {
        past.stands(one, "TX-1" + past.site, "2026-01-01T00:00");
        past.stands(one, "TX-2" + past.site, "2026-06-10T13:30");
        past.silent(one, "2026-06-10T10:00", "2026-06-10T13:00");
        past.span(two, "2026-06-10T00:00", "2026-06-11T00:00", Condition.ANSWERING);
        past.episode("device-silent", one, "2026-06-10T10:00", "2026-06-10T13:00", "DEVICE_LOST", null);
        Outage outage = outages().get(0);
        assertThat(outage.cause()).isEqualTo(Cause.DEVICE);
        assertThat(outage.what()).isEqualTo("ap-desk");
        assertThat(outage.wholeSite()).isFalse();
        assertThat(outage.replaced()).isTrue();
        assertThat(outage.people()).as("no past to tell from").isEmpty();
        assertThat(outage.personMinutes()).isEmpty();
        assertThat(work().replaced()).hasSize(1);
        assertThat(work().replaced().get(0).oldSerial()).isEqualTo("TX-1" + past.site);
        assertThat(work().replaced().get(0).newSerial()).isEqualTo("TX-2" + past.site);
        assertThat(work().replaced().get(0).device()).isEqualTo("ap-desk");
    }

    @Test
    void silenceThatNoAlarmExplainsIsNotWorkedOut() {
        past.silent(one, "2026-06-10T10:00", "2026-06-10T10:05");
        Outage outage = outages().get(0);
        assertThat(outage.cause()).isEqualTo(Cause.NOT_WORKED_OUT);
        assertThat(outage.what()).isEqualTo("ap-desk");
        assertThat(outage.noticed()).isEmpty();
        assertThat(outage.taken()).isEmpty();
        assertThat(outage.alarmId()).isEqualTo(OptionalLong.empty());
    }

    @Test
    void whatReachesBeyondTheMonthIsCutToIt() {
        past.silent(one, "2026-05-31T22:00", "2026-06-01T02:00");
        past.silent(two, "2026-06-30T23:00", "2026-07-01T05:00");
        List<Outage> outages = outages();
        assertThat(outages).hasSize(2);
        assertThat(outages.get(0).begunBefore()).isTrue();
        assertThat(outages.get(0).ongoing()).isFalse();
        assertThat(outages.get(0).silence()).isEqualTo(Duration.ofHours(2));
        assertThat(outages.get(1).begunBefore()).isFalse();
        assertThat(outages.get(1).ongoing()).isTrue();
        assertThat(outages.get(1).to()).isEqualTo(at("2026-07-01T00:00"));
    }

    @Test
    void whatLastsLongerThanTwoDaysHasNoPersonMinutes() {
        past.usually(one, "2026-06-10T10:00", 1, 20);
        past.silent(one, "2026-06-10T10:00", "2026-06-12T10:01");
        assertThat(outages().get(0).people()).hasValue(20);
        assertThat(outages().get(0).personMinutes()).isEmpty();
    }

    @Test
    void plannedWorkTakesItsTimeOutOfAnOutage() {
        past.silent(one, "2026-06-10T10:00", "2026-06-10T11:00");
        past.work("SITE", null, "Cabling", "2026-06-10T10:30", "2026-06-10T12:00");
        past.work("DEVICE", two, "New mount", "2026-06-30T23:00", "2026-07-01T01:00");
        past.work("CUSTOMER", null, "Firmware", "2026-05-31T23:00", "2026-06-01T01:00");
        past.work("SITE", null, "Later", "2026-07-01T00:00", "2026-07-01T01:00");
        past.work("SITE", null, "Before", "2026-05-31T20:00", "2026-06-01T00:00");
        assertThat(outages()).hasSize(1);
        assertThat(outages().get(0).silence()).isEqualTo(Duration.ofMinutes(30));
        assertThat(work().planned())
                .extracting(WorkDone.PlannedWork::title)
                .containsExactly("Firmware", "Cabling", "New mount");
        assertThat(work().planned()).extracting(WorkDone.PlannedWork::device).containsExactly("", "", "ap-hall");
        assertThat(work().planned().get(2).to()).isEqualTo(at("2026-07-01T01:00"));
    }

    @Test
    void silenceOfAllOutagesIsTheSilenceOfTheSite() {
        past.silent(one, "2026-05-30T10:00", "2026-06-02T10:00");
        past.silent(two, "2026-06-02T09:00", "2026-06-02T12:00");
        past.silent(one, "2026-06-10T10:00", "2026-06-10T11:00");
        past.work("DEVICE", one, "New mount", "2026-06-01T10:00", "2026-06-01T11:00");
        past.episode("device-silent", one, "2026-05-30T10:00", "2026-06-02T10:00", "LINK_DOWN", null);
        Duration sum = outages().stream().map(Outage::silence).reduce(Duration.ZERO, Duration::plus);
        assertThat(sum)
                .isEqualTo(past.times(june(), LATER).get(0).whole().silent())
                .as("33 h, 3 h and 1 h")
                .isEqualTo(Duration.ofHours(37));
        assertThat(outages())
                .extracting(Outage::cause)
                .containsExactly(Cause.CABLE, Cause.CABLE, Cause.NOT_WORKED_OUT, Cause.NOT_WORKED_OUT);
    }

    @Test
    void alarmsAndFirmwareOfTheMonthAreTold() {
        long root = past.episode("device-silent", one, "2026-06-10T10:00", "2026-06-10T10:30", "DEVICE_LOST", null);
        past.act(root, "2026-06-10T10:12", "ACK");
        past.episode("device-restarted", one, "2026-06-10T10:29", "2026-06-10T10:40", "RESTARTED", root);
        past.episode("cpu-high", two, "2026-06-20T10:00", null, "ITSELF", null);
        past.episode("cpu-high", one, "2026-05-20T10:00", "2026-06-20T10:00", "ITSELF", null);
        past.runs(one, "2026-06-15T03:00", "6.4.1", "6.4.2");
        past.runs(two, "2026-07-01T00:00", "6.4.1", "6.4.2");
        Handling handling = handling();
        assertThat(handling.alarms()).isEqualTo(2);
        assertThat(handling.explained()).isEqualTo(1);
        assertThat(handling.taken()).isEqualTo(1);
        assertThat(handling.toTake()).as("raised two minutes after it began").hasValue(Duration.ofMinutes(10));
        assertThat(handling.toClear()).hasValue(Duration.ofMinutes(28));
        assertThat(work().upgraded()).hasSize(1);
        assertThat(work().upgraded().get(0).fresh()).isEqualTo("6.4.2");
        assertThat(work().upgraded().get(0).site()).isEqualTo("Mill Lane");
    }

    @Test
    void anotherCustomersAlarmsAreNobodysElse() {
        past.episode("device-silent", one, "2026-06-10T10:00", "2026-06-10T10:30", "DEVICE_LOST", null);
        PastOfSite other = new PastOfSite(database);
        ReportSubject subject = ReportSubject.of(other.customer, other.name, YearMonth.of(2026, 6));
        assertThat(other.events(subject, LATER).episodes()).isEmpty();
    }
}
