package org.roundsman.web.triage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.roundsman.alarms.SampleAlarms.NOON;
import static org.roundsman.alarms.SampleAlarms.over;
import static org.roundsman.alarms.SampleAlarms.sample;

import java.time.Duration;
import java.time.Instant;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.Impact;
import org.roundsman.alarms.OpenAlarm;

class AlarmWordsTest {

    private static final Impact FORTY = new Impact(OptionalInt.of(12), OptionalInt.of(28), OptionalInt.of(0), 14, true);

    private static OpenAlarm alarm(AlarmType type, CauseKind cause, boolean settled) {
        return sample(1).of(type).alarm(FORTY, cause, settled);
    }

    @Test
    void theCauseIsTheTitleAndWhatIsSeenStandsUnderIt() {
        OpenAlarm port = alarm(AlarmType.DEVICE_SILENT, CauseKind.PORT_NOT_DELIVERING, true);
        assertThat(AlarmWords.title(port)).isEqualTo("Switch port delivers no power");
        assertThat(AlarmWords.under(port)).isEqualTo("Does not answer");
        OpenAlarm busy = alarm(AlarmType.UTILISATION_HIGH, CauseKind.ITSELF, true);
        assertThat(AlarmWords.title(busy)).isEqualTo("Channel busy");
        assertThat(AlarmWords.under(busy)).isEmpty();
        OpenAlarm off = alarm(AlarmType.RADIO_OFF, CauseKind.RADIO_OFF, true);
        assertThat(AlarmWords.title(off)).isEqualTo("Radio off");
        assertThat(AlarmWords.under(off)).isEmpty();
    }

    @Test
    void doubtIsSaid() {
        OpenAlarm unsure = alarm(AlarmType.DEVICE_SILENT, CauseKind.NOT_SURE, true);
        assertThat(AlarmWords.title(unsure)).isEqualTo("Does not answer");
        assertThat(AlarmWords.under(unsure)).isEqualTo("we are not sure of the cause");
        OpenAlarm early = alarm(AlarmType.DEVICE_SILENT, CauseKind.NOT_SURE, false);
        assertThat(AlarmWords.under(early)).isEqualTo("the cause is still being worked out");
    }

    @Test
    void whoSuffersIsSaidInPeople() {
        assertThat(WhoSuffers.of(alarm(AlarmType.DEVICE_SILENT, CauseKind.DEVICE_LOST, true)))
                .isEqualTo("about 40 people would be online now: 12 staff, 28 guests; 14 access points");
        assertThat(WhoSuffers.of(alarm(AlarmType.UTILISATION_HIGH, CauseKind.ITSELF, true)))
                .startsWith("about 40 people usually online at this hour");
        assertThat(WhoSuffers.of(sample(1).people(0).alarm()))
                .isEqualTo("nobody is usually online at this hour; 1 access point");
        assertThat(WhoSuffers.of(sample(1).people(1).alarm()))
                .isEqualTo("about 1 person would be online now: 1 staff; 1 access point");
        assertThat(WhoSuffers.of(sample(1).unknown(2).alarm()))
                .isEqualTo("how many people are usually online at this hour is not known yet; 2 access points");
    }

    @Test
    void whoSufferedFromWhatIsOverIsSaidInThePast() {
        Instant end = NOON.plusSeconds(60);
        assertThat(WhoSuffers.of(over(alarm(AlarmType.DEVICE_SILENT, CauseKind.DEVICE_LOST, true), end)))
                .isEqualTo("about 40 people would have been online: 12 staff, 28 guests; 14 access points");
        assertThat(WhoSuffers.of(over(alarm(AlarmType.UTILISATION_HIGH, CauseKind.ITSELF, true), end)))
                .startsWith("about 40 people usually online at that hour");
        assertThat(WhoSuffers.of(over(sample(1).people(0).alarm(), end)))
                .isEqualTo("nobody is usually online at that hour; 1 access point");
    }

    @Test
    void aLineOfAListSaysTheSameShortly() {
        assertThat(WhoSuffers.shortly(alarm(AlarmType.DEVICE_SILENT, CauseKind.DEVICE_LOST, true)))
                .isEqualTo("About 40 people would be online now, 14 access points affected");
        assertThat(WhoSuffers.shortly(alarm(AlarmType.UTILISATION_HIGH, CauseKind.ITSELF, true)))
                .isEqualTo("About 40 people usually online at this hour, 14 access points affected");
        assertThat(WhoSuffers.shortly(sample(1).people(0).alarm()))
                .isEqualTo("Nobody is usually online at this hour, 1 access point affected");
        assertThat(WhoSuffers.shortly(sample(1).unknown(0).alarm())).isEmpty();
        Impact nobody = new Impact(OptionalInt.of(0), OptionalInt.of(0), OptionalInt.of(0), 0, true);
        assertThat(WhoSuffers.shortly(sample(1).alarm(nobody))).isEqualTo("Nobody: no access point is affected");
    }

    @Test
    void timesAreTheSitesOwn() {
        OpenAlarm alarm = sample(1).alarm();
        assertThat(AlarmWords.since(alarm, NOON.plus(Duration.ofMinutes(12))))
                .isEqualTo("for 12 min, since 13:00 site time");
        assertThat(AlarmWords.since(alarm, NOON.plus(Duration.ofHours(20))))
                .isEqualTo("for 20 h, since Wed 25 Nov, 13:00 site time");
    }

    @Test
    void theEndHasItsDayWhereItIsNotTheDayOfTheStart() {
        OpenAlarm alarm = sample(1).alarm();
        assertThat(AlarmWords.lasted(over(alarm, NOON.plus(Duration.ofMinutes(5))), NOON.plus(Duration.ofMinutes(9))))
                .isEqualTo("lasted 5 min, 13:00 to 13:05 site time");
        assertThat(AlarmWords.lasted(over(alarm, NOON.plus(Duration.ofMinutes(5))), NOON.plus(Duration.ofDays(1))))
                .isEqualTo("lasted 5 min, Wed 25 Nov, 13:00 to 13:05 site time");
        Instant nextDay = NOON.plus(Duration.ofHours(26));
        assertThat(AlarmWords.lasted(over(alarm, nextDay), nextDay))
                .isEqualTo("lasted 1 day 2 h, Wed 25 Nov, 13:00 to Thu 26 Nov, 15:00 site time");
    }
}
