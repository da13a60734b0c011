package org.roundsman.reports.figures;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.PastEpisode;
import org.roundsman.measure.Condition;
import org.roundsman.reports.Outage.Cause;
import org.roundsman.reports.figures.SampleEpisodes.Sample;

/** What was silent together, and what was behind it, by cases worked out by hand. */
class GoneTest {

    private static final long SWITCH = 50;

    private final SampleSite site = SampleSite.month("Europe/Berlin", "2026-06").points(3);

    private static String on(String time) {
        return "2026-06-10T" + time;
    }

    private GoneTest silent(long device, String from, String to) {
        site.span(device, on(from), on(to), Condition.SILENT);
        return this;
    }

    private Sample uplink(long id, String from, String to) {
        return SampleEpisodes.of(id, AlarmType.UPLINK_LOST, OptionalLong.empty())
                .because(CauseKind.UPLINK_LOST)
                .lasts(site.at(on(from)), site.at(on(to)));
    }

    private Sample silence(long id, long device, String from, String to) {
        return SampleEpisodes.of(id, AlarmType.DEVICE_SILENT, OptionalLong.of(device))
                .because(CauseKind.DEVICE_LOST)
                .lasts(site.at(on(from)), site.at(on(to)));
    }

    private List<Gone> gone(Sample... samples) {
        List<PastEpisode> episodes = Arrays.stream(samples).map(Sample::episode).toList();
        return Gone.of(site.times().silences(), new Causes(site.site(), episodes)::of);
    }

    private static Optional<Cause> cause(Gone gone) {
        return gone.cause().map(Causes::word);
    }

    @Test
    void whatTheUplinkTookDownIsOneOutage() {
        silent(1, "10:00", "10:30").silent(2, "10:01", "10:31").silent(3, "10:31:30", "10:40");
        List<Gone> gone = gone(
                uplink(1, "10:00", "10:35").with(1L, 2L, 3L),
                silence(2, 1, "10:00", "10:30").explainedBy(1),
                silence(3, 2, "10:01", "10:31").explainedBy(1));
        assertThat(gone).hasSize(1);
        assertThat(gone.get(0).devices()).containsExactly(1L, 2L, 3L);
        assertThat(cause(gone.get(0))).hasValue(Cause.UPLINK);
        assertThat(gone.get(0).to()).isEqualTo(site.at(on("10:40")));
    }

    /** Nobody listed the devices: everything at the site hangs on its uplink. */
    @Test
    void theUplinkConcernsEveryAccessPointOfItsSite() {
        silent(1, "10:00", "10:30");
        assertThat(cause(gone(uplink(1, "10:00", "10:30")).get(0))).hasValue(Cause.UPLINK);
    }

    @Test
    void twoMinutesApartAreTwoOutagesOfTheSameCause() {
        silent(1, "10:00", "10:30").silent(1, "10:31:59", "10:40").silent(1, "10:42", "10:50");
        List<Gone> gone = gone(uplink(1, "10:00", "10:55"));
        assertThat(gone).hasSize(2);
        assertThat(gone.get(0).silences()).hasSize(2);
        assertThat(gone.get(1).from()).isEqualTo(site.at(on("10:42")));
    }

    /** One alarm told of it: to whoever reads, it is one thing that went wrong again and again. */
    @Test
    void whatComesAndGoesIsOneOutageHoweverFarApart() {
        silent(1, "10:00", "10:04").silent(1, "11:00", "11:06").silent(1, "13:00", "13:05");
        Sample flaps = SampleEpisodes.of(1, AlarmType.FLAPPING, OptionalLong.of(1))
                .because(CauseKind.FLAPPING)
                .lasts(site.at(on("09:00")), site.at(on("14:00")));
        List<Gone> gone = gone(flaps);
        assertThat(gone).hasSize(1);
        assertThat(gone.get(0).times()).isEqualTo(3);
        assertThat(gone.get(0).silence()).isEqualTo(Duration.ofMinutes(15));
    }

    @Test
    void twoCausesAtOneTimeAreTwoOutages() {
        silent(1, "10:00", "10:30").silent(2, "10:05", "10:20");
        List<Gone> gone = gone(silence(1, 1, "10:00", "10:30"), silence(2, 2, "10:05", "10:20"));
        assertThat(gone).extracting(Gone::devices).containsExactly(Set.of(1L), Set.of(2L));
    }

    @Test
    void withoutACauseTheyBelongTogetherOnlyWhileTheyShareTime() {
        silent(1, "10:00", "10:30").silent(2, "10:20", "10:40").silent(3, "10:40", "10:50");
        List<Gone> gone = gone();
        assertThat(gone).hasSize(2);
        assertThat(gone.get(0).devices()).containsExactly(1L, 2L);
        assertThat(gone.get(1).devices()).containsExactly(3L);
        assertThat(gone).extracting(GoneTest::cause).containsOnly(Optional.empty());
    }

    @Test
    void whatHangsOnASilentSwitchIsGoneWithIt() {
        silent(1, "10:00", "10:30");
        List<Gone> gone = gone(silence(1, SWITCH, "10:00", "10:29")
                .because(CauseKind.SWITCH_POWER)
                .with(1L));
        assertThat(cause(gone.get(0))).hasValue(Cause.SWITCH_POWER);
        assertThat(gone.get(0).cause().map(PastEpisode::name)).hasValue("device 50");
    }

    @Test
    void aChainOfAlarmsLeadsToItsBeginning() {
        silent(1, "10:00", "10:30");
        List<Gone> gone = gone(
                silence(3, 1, "10:00", "10:30").explainedBy(2),
                silence(2, SWITCH, "10:00", "10:30").explainedBy(1),
                uplink(1, "10:00", "10:30"));
        assertThat(gone.get(0).cause().map(PastEpisode::id)).hasValue(1L);
    }

    /** Our own blindness is an alarm of the service and of no customer: nothing of theirs explains the silence. */
    @Test
    void ourBlindnessIsNoCauseOfTheirs() {
        silent(1, "10:00", "10:30");
        List<Gone> gone = gone(silence(3, 1, "10:00", "10:30").explainedBy(99));
        assertThat(gone).hasSize(1);
        assertThat(cause(gone.get(0))).isEmpty();
    }

    @Test
    void theCauseSharesTheMostTime() {
        silent(1, "10:00", "14:00");
        List<Gone> gone = gone(uplink(1, "09:50", "10:30"), silence(2, 1, "10:00", "14:00"));
        assertThat(cause(gone.get(0))).hasValue(Cause.DEVICE);
    }

    @Test
    void whatCameBeforeAndAfterIsNoCause() {
        silent(1, "10:00", "10:30");
        assertThat(cause(gone(uplink(1, "09:00", "10:00"), silence(2, 1, "10:30", "11:00"))
                        .get(0)))
                .isEmpty();
    }

    @Test
    void anAlarmThatGoesOnIsACause() {
        silent(1, "10:00", "10:30");
        List<Gone> gone = gone(silence(1, 1, "10:00", "11:00").lasts(site.at(on("10:00")), null));
        assertThat(cause(gone.get(0))).hasValue(Cause.DEVICE);
    }

    @Test
    void otherAlarmsAreNoCauses() {
        silent(1, "10:00", "10:30");
        Sample busy = SampleEpisodes.of(1, AlarmType.CPU_HIGH, OptionalLong.of(1))
                .lasts(site.at(on("09:00")), site.at(on("12:00")));
        assertThat(cause(gone(busy).get(0))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "UPLINK_LOST, UPLINK",
        "SWITCH_LOST, SWITCH",
        "SWITCH_POWER, SWITCH_POWER",
        "PORT_NOT_DELIVERING, PORT_POWER",
        "NO_POWER_DRAWN, CABLE",
        "LINK_DOWN, CABLE",
        "DEVICE_LOST, DEVICE",
        "MANAGEMENT_LOST, DEVICE",
        "RESTARTED, RESTART",
        "FLAPPING, COMES_AND_GOES",
        "NOT_SURE, NOT_SURE",
        "CREDENTIALS_REFUSED, NOT_SURE",
        "ITSELF, NOT_WORKED_OUT"
    })
    void causesHaveTheirWords(CauseKind kind, Cause word) {
        Sample sample = SampleEpisodes.of(1, AlarmType.DEVICE_SILENT, OptionalLong.of(1));
        assertThat(Causes.word(sample.because(kind).episode())).isEqualTo(word);
    }
}
