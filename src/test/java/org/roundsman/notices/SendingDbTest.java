package org.roundsman.notices;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.Severity;
import org.roundsman.notices.send.SendFailure;
import org.roundsman.notices.store.OutboxTable.Claimed;

/** The outbox: repeats, crashes, giving up, and the hourly bound, in a real PostgreSQL. */
class SendingDbTest {

    private NoticeFixture f = NoticeFixture.shared("sending", TestConfig.usual());

    private static Optional<SendFailure> away() {
        return Optional.of(SendFailure.passing("connection refused", null));
    }

    @Test
    void aCrashBeforeSendingLosesNothing() {
        f.person("wren");
        f.raised(1, Severity.MAJOR);
        new Telling(f.surroundings()).takeChanges(); // and the service dies here
        new Telling(f.surroundings()).run(); // started again; and dies with the message written
        List<Claimed> claimed = f.sending().claim(10); // started again; and dies with the message in its hands
        assertThat(claimed).hasSize(1);
        f.run();
        assertThat(f.arrived).as("it may still be under way elsewhere").isEmpty();
        f.after(Sending.LEASE.plusSeconds(1));
        assertThat(f.kinds()).containsExactly("raise");
        assertThat(f.arrived.get(0).key()).isEqualTo(claimed.get(0).key());
    }

    @Test
    void aCrashAfterSendingRepeatsTheSameMessageUnderTheSameKey() {
        f.person("wren");
        f.raised(1, Severity.MAJOR);
        new Telling(f.surroundings()).run();
        f.arrived.addAll(f.sending().claim(10)); // it arrived, and the service dies before it writes that down
        f.after(Sending.LEASE.plusSeconds(1));
        f.minutes(60);
        assertThat(f.kinds()).containsExactly("raise", "raise");
        assertThat(f.arrived)
                .extracting(Claimed::key)
                .containsOnly(f.arrived.get(0).key());
        assertThat(f.arrived.get(1).content()).isEqualTo(f.arrived.get(0).content());
        assertThat(f.outbox()).containsExactly("SENT raise");
    }

    @Test
    void aFailureOfTheDatabaseInTheMiddleOfADecisionLeavesNothingBehind() {
        f.person("wren");
        f.raised(1, Severity.MAJOR);
        AlarmSource failing = new AlarmSource() {
            @Override
            public List<StatusChange> changesAfter(long changeId, int most) {
                return f.alarms.changesAfter(changeId, most);
            }

            @Override
            public java.util.Collection<org.roundsman.alarms.OpenAlarm> active() {
                throw new IllegalStateException("the database is away");
            }

            @Override
            public Optional<org.roundsman.alarms.OpenAlarm> episode(long episodeId) {
                return Optional.empty();
            }

            @Override
            public List<org.roundsman.alarms.OpenAlarm> clearedSince(java.time.Instant since) {
                return List.of();
            }
        };
        assertThatThrownBy(() -> new Telling(f.with(failing)).run()).hasMessageContaining("away");
        assertThat(f.outbox()).isEmpty();
        f.run();
        assertThat(f.kinds()).containsExactly("raise");
    }

    @Test
    void whatFailsIsTriedAgainAtGrowingPausesAndGivenUpAfterADay() {
        f.person("wren");
        f.receiver = message -> away();
        f.raised(1, Severity.MAJOR);
        f.run();
        for (int minute = 0; minute < 23 * 60; minute += 3) {
            f.minutes(3);
        }
        int attempts = (int) f.id("select attempts from notice_outbox");
        // 30 s doubling up to an hour, each scattered by a quarter: 7 attempts in the first hour or so, then about one
        // an hour
        assertThat(attempts).isBetween(22, 38);
        assertThat(f.outbox()).containsExactly("WAITING raise");
        for (int minute = 0; minute < 2 * 60; minute += 3) {
            f.minutes(3);
        }
        assertThat(f.outbox()).containsExactly("DEAD raise");
        assertThat(f.texts("select failure from notice_outbox")).containsExactly("connection refused");
    }

    @Test
    void whatIsInVainIsGivenUpAtOnce() {
        f.person("wren");
        f.receiver = message -> Optional.of(SendFailure.permanent("550 no such user", null));
        f.raised(1, Severity.MAJOR);
        f.run();
        assertThat(f.outbox()).containsExactly("DEAD raise");
    }

    @Test
    void theEndIsNotToldBeforeTheBeginning() {
        f.person("wren");
        f.receiver = message -> away();
        FakeAlarms.Alarm gate = f.raised(1, Severity.MAJOR);
        f.run();
        f.clear(gate);
        f.minutes(11);
        assertThat(f.outbox()).containsExactly("WAITING raise", "WAITING clear");
        f.receiver = message -> Optional.empty();
        f.minutes(30);
        f.minutes(1);
        assertThat(f.kinds()).containsExactly("raise", "clear");
    }

    @Test
    void overTheBoundOneSummaryStandsForTheRest() {
        f = NoticeFixture.shared("sending", TestConfig.most(12));
        f.person("wren");
        for (int id = 1; id <= 20; id++) {
            f.raised(id, id == 17 ? Severity.CRITICAL : Severity.MAJOR);
        }
        f.run();
        assertThat(f.arrived).hasSize(11);
        f.minutes(1);
        assertThat(f.arrived).as("more may come").hasSize(11);
        f.minutes(1);
        assertThat(f.arrived).hasSize(12);
        Claimed summary = f.arrived.get(11);
        assertThat(summary.kind().word()).isEqualTo("summary");
        assertThat(summary.content().subject())
                .isEqualTo(
                        "[invented] 9 more messages since Wed 4 Mar, 12:00 CET, the worst: Does not answer: Gate AP 17"
                                + " at Pier North (Saltmarsh Ferry Line): device lost");
        f.raised(21, Severity.MAJOR);
        f.minutes(30);
        assertThat(f.arrived).as("the hour is full").hasSize(12);
        f.minutes(30);
        assertThat(f.arrived).hasSize(13);
    }

    @Test
    void whatMayHaveArrivedIsNotToldAgainInASummary() {
        f = NoticeFixture.shared("sending", TestConfig.most(3));
        f.person("wren");
        f.receiver = message -> Optional.of(SendFailure.uncertain("no answer", null));
        for (int id = 1; id <= 2; id++) {
            f.raised(id, Severity.MAJOR);
        }
        f.run();
        f.receiver = message -> Optional.empty();
        for (int id = 3; id <= 9; id++) {
            f.raised(id, Severity.MAJOR);
        }
        f.minutes(3);
        f.minutes(3);
        assertThat(f.kinds()).containsExactly("raise", "raise", "summary");
        assertThat(f.arrived.get(2).content().subject()).contains("7 more messages");
    }

    @Test
    void theFollowUpOfASummedMessageFollowsTheSummary() {
        f = NoticeFixture.shared("sending", TestConfig.most(2));
        f.person("wren");
        f.raised(1, Severity.MAJOR);
        FakeAlarms.Alarm summed = f.raised(2, Severity.MAJOR);
        f.raised(3, Severity.MAJOR);
        f.run();
        f.minutes(2);
        assertThat(f.kinds()).containsExactly("raise", "summary");
        f.after(Duration.ofHours(2));
        f.clear(summed);
        f.minutes(11);
        assertThat(f.kinds()).containsExactly("raise", "summary", "clear");
        assertThat(f.arrived.get(2).follows()).contains(f.arrived.get(1).key());
    }

    @Test
    void twoSendersTakeNothingTwice() {
        f.person("wren");
        for (int id = 1; id <= 8; id++) {
            f.raised(id, Severity.MAJOR);
        }
        new Telling(f.surroundings()).run();
        List<Claimed> first = f.sending().claim(5);
        List<Claimed> second = f.sending().claim(5);
        assertThat(first).hasSize(5);
        assertThat(second).hasSize(3);
        assertThat(first)
                .extracting(Claimed::id)
                .doesNotContainAnyElementsOf(second.stream().map(Claimed::id).toList());
    }
}
