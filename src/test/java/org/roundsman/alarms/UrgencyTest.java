package org.roundsman.alarms;

import static org.assertj.core.api.Assertions.assertThat;
import static org.roundsman.alarms.SampleAlarms.NOON;
import static org.roundsman.alarms.SampleAlarms.sample;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.alarms.SampleAlarms.Sample;
import org.roundsman.alarms.Urgency.Reason;

/** The order of the list. No standard gives one: what is held here is what the user's guide says. */
class UrgencyTest {

    private static void above(Sample first, Sample second, Reason reason) {
        OpenAlarm one = first.alarm();
        OpenAlarm other = second.alarm();
        assertThat(Urgency.sorted(List.of(other, one))).containsExactly(one, other);
        assertThat(Urgency.sorted(List.of(one, other))).containsExactly(one, other);
        assertThat(Urgency.between(one, other)).isEqualTo(reason);
    }

    @Test
    void morePeopleComeFirstThenServiceHoursThenSeverityThenAge() {
        above(sample(2).people(40).outsideHours(), sample(1).people(20), Reason.PEOPLE);
        above(sample(2), sample(1).outsideHours(), Reason.SERVICE_HOURS);
        above(sample(2), sample(1).with(Severity.MAJOR), Reason.SEVERITY);
        above(sample(2).began(NOON.minus(Duration.ofHours(1))), sample(1), Reason.AGE);
        above(sample(1), sample(2), Reason.NOTHING);
    }

    @Test
    void oneGuestMoreDoesNotOutweighSeverity() {
        above(sample(2).people(20), sample(1).people(25).with(Severity.MAJOR), Reason.SEVERITY);
    }

    @Test
    void whileWeAreBlindThatComesFirst() {
        above(
                sample(2).of(AlarmType.VIEW_LOST).with(Severity.MAJOR).unknown(0),
                sample(1).people(500),
                Reason.BLIND);
    }

    /** X.733: with minor and warning the service goes on. */
    @Test
    void nobodySuffersFromAWarningHoweverManyThereAre() {
        above(sample(2).people(3), sample(1).people(300).with(Severity.WARNING), Reason.PEOPLE);
        above(sample(2).people(3), sample(1).people(300).with(Severity.MINOR), Reason.PEOPLE);
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "1, 1", "9, 1", "10, 2", "29, 2", "30, 3", "99, 3", "100, 4", "5000, 4"})
    void peopleAreCountedInBands(int people, int band) {
        assertThat(Urgency.band(sample(1).people(people).alarm())).isEqualTo(band);
    }

    @Test
    void whereNobodyKnowsHowManyAnAccessPointCountsAsSomebody() {
        assertThat(Urgency.band(sample(1).unknown(1).alarm())).isEqualTo(1);
        assertThat(Urgency.band(sample(1).unknown(0).alarm())).isZero();
    }

    @Property
    void theOrderDoesNotDependOnWhatCameFirst(@ForAll @IntRange(min = 2, max = 30) int count, @ForAll long seed) {
        Random random = new Random(seed);
        List<OpenAlarm> alarms = new ArrayList<>();
        for (int id = 1; id <= count; id++) {
            Sample one = sample(id)
                    .people(random.nextInt(60))
                    .with(Severity.values()[random.nextInt(Severity.values().length)])
                    .began(NOON.minusSeconds(random.nextInt(3)));
            alarms.add((random.nextBoolean() ? one : one.outsideHours()).alarm());
        }
        List<OpenAlarm> sorted = Urgency.sorted(alarms);
        Collections.shuffle(alarms, random);
        assertThat(Urgency.sorted(alarms)).isEqualTo(sorted);
        for (int i = 1; i < sorted.size(); i++) {
            assertThat(Urgency.band(sorted.get(i))).isLessThanOrEqualTo(Urgency.band(sorted.get(i - 1)));
        }
    }
}
