package org.roundsman.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.OperatorState;
import org.roundsman.alarms.Severity;

/** Which messages come of which alarms, in a real PostgreSQL. */
class TellingDbTest {

    private NoticeFixture f;

    @BeforeEach
    void nobodyYet() {
        f = NoticeFixture.shared("telling", TestConfig.usual());
    }

    @Test
    void anAlarmIsToldOnceAndItsEndOnceAfterTheCalmTime() {
        f.person("wren");
        FakeAlarms.Alarm gate = f.raised(1, Severity.MAJOR);
        f.run();
        f.minutes(1);
        f.minutes(60);
        assertThat(f.kinds()).containsExactly("raise");
        assertThat(f.arrived.get(0).content().subject())
                .isEqualTo("[invented] Does not answer: Gate AP 1 at Pier North (Saltmarsh Ferry Line): device lost");
        f.clear(gate);
        f.minutes(9);
        assertThat(f.kinds()).containsExactly("raise");
        f.minutes(2);
        f.minutes(60);
        assertThat(f.kinds()).containsExactly("raise", "clear");
        assertThat(f.arrived.get(1).content().lead()).contains("after 1 h 4 min");
        assertThat(f.arrived.get(1).follows()).contains(f.arrived.get(0).key());
    }

    @Test
    void flappingMakesOneMessage() {
        f.person("wren");
        FakeAlarms.Alarm gate = f.raised(1, Severity.MAJOR);
        f.run();
        for (int i = 0; i < 20; i++) {
            f.clear(gate);
            f.minutes(5);
            f.raised(1, Severity.MAJOR);
            f.minutes(4);
        }
        assertThat(f.kinds()).containsExactly("raise");
        f.clear(gate);
        f.minutes(11);
        assertThat(f.kinds()).containsExactly("raise", "clear");
        assertThat(f.arrived.get(1).content().lead()).contains("came and went 21 times");
    }

    @Test
    void anAlarmThatIsGoneBeforeItWasToldTellsNobody() {
        f.person("wren");
        FakeAlarms.Alarm gate = f.raised(1, Severity.MAJOR);
        gate.settled = false;
        f.run();
        f.clear(gate);
        f.minutes(30);
        assertThat(f.arrived).isEmpty();
        assertThat(f.id("select count(*) from notice_thread where not over")).isZero();
    }

    @Test
    void theCauseIsWaitedForButNotForEver() {
        f.person("wren");
        FakeAlarms.Alarm gate = f.raised(1, Severity.MAJOR);
        gate.settled = false;
        f.run();
        f.minutes(1);
        assertThat(f.arrived).isEmpty();
        f.minutes(1);
        assertThat(f.kinds()).containsExactly("raise");
    }

    @Test
    void whatAnotherAlarmExplainsIsNotTold() {
        f.person("wren");
        FakeAlarms.Alarm uplink = f.raised(1, Severity.CRITICAL);
        FakeAlarms.Alarm gate = f.raised(2, Severity.MAJOR);
        gate.causedBy = 1;
        f.run();
        assertThat(f.arrived).hasSize(1);
        f.clear(uplink);
        gate.causedBy = 0;
        f.minutes(1);
        assertThat(f.arrived).hasSize(2);
        assertThat(f.arrived.get(1).content().subject()).contains("Gate AP 2");
    }

    @Test
    void plannedWorkSilencesAndWhatStillStandsAfterItIsTold() {
        f.person("wren");
        FakeAlarms.Alarm gate = f.raised(1, Severity.MAJOR);
        gate.planned = true;
        f.run();
        f.minutes(90);
        assertThat(f.arrived).isEmpty();
        gate.planned = false;
        f.minutes(1);
        assertThat(f.kinds()).containsExactly("raise");
    }

    @Test
    void shelvedAndClosedAlarmsAreNotTold() {
        f.person("wren");
        f.raised(1, Severity.MAJOR).operator = OperatorState.SHELVED;
        f.raised(2, Severity.MAJOR).operator = OperatorState.CLOSED;
        f.run();
        f.minutes(30);
        assertThat(f.arrived).isEmpty();
        FakeAlarms.Alarm told = f.raised(3, Severity.MAJOR);
        f.minutes(1);
        told.operator = OperatorState.SHELVED;
        f.clear(told);
        f.minutes(30);
        assertThat(f.kinds()).as("its end is not told either").containsExactly("raise");
    }

    @Test
    void gettingWorseIsToldOnceForEachLevelAndGettingBetterIsNot() {
        f.person("wren");
        f.raised(1, Severity.MINOR);
        f.run();
        f.raised(1, Severity.MAJOR);
        f.minutes(1);
        f.raised(1, Severity.WARNING);
        f.minutes(1);
        f.raised(1, Severity.MAJOR);
        f.minutes(1);
        f.raised(1, Severity.CRITICAL);
        f.minutes(1);
        assertThat(f.kinds()).containsExactly("raise", "update", "update");
        assertThat(f.arrived.get(2).content().lead()).startsWith("Now critical");
    }

    @Test
    void whoWantsWorseAlarmsOnlyIsToldWhenItBecomesOne() {
        f.person("wren", c -> Choose.from(c, Severity.CRITICAL));
        f.raised(1, Severity.MINOR);
        f.run();
        assertThat(f.arrived).isEmpty();
        f.raised(1, Severity.CRITICAL);
        f.minutes(1);
        assertThat(f.kinds()).containsExactly("raise");
    }

    @Test
    void peopleHearOfTheirCustomersAndEventsAlone() {
        f.person("wren", c -> Choose.customers(c, Set.of(f.otherCustomer)));
        f.person("orrin", c -> Choose.events(c, EnumSet.of(NoticeEvent.RAISE)));
        FakeAlarms.Alarm gate = f.raised(1, Severity.MAJOR);
        f.run();
        f.clear(gate);
        f.minutes(11);
        assertThat(f.kinds()).containsExactly("raise");
        f.alarms.raise(f.alarms.alarm(2, f.otherCustomer), Severity.MAJOR, f.clock.instant());
        f.minutes(1);
        assertThat(f.kinds()).containsExactly("raise", "raise", "raise");
    }

    /** 29 March 2026, 02:00 to 03:00 does not exist in Berlin (IANA tz database): the hours begin by the new time. */
    @Test
    void whatStandsWhenTheHoursBeginIsToldThen() {
        f.person("wren", c -> Choose.hours(c, "Sun 03:30-12:00"));
        f.clock.set(Instant.parse("2026-03-29T00:30:00Z"));
        FakeAlarms.Alarm gate = f.raised(1, Severity.MAJOR);
        FakeAlarms.Alarm gone = f.raised(2, Severity.MAJOR);
        f.run();
        f.minutes(30);
        f.clear(gone);
        f.minutes(20);
        assertThat(f.arrived).isEmpty();
        f.minutes(11);
        assertThat(f.arrived).hasSize(1);
        assertThat(f.arrived.get(0).content().subject()).contains("Gate AP 1");
        f.clock.set(Instant.parse("2026-03-29T09:55:00Z"));
        f.clear(gate);
        f.minutes(11);
        assertThat(f.kinds()).as("12:06 by their clock, after their hours").containsExactly("raise");
        f.clock.set(Instant.parse("2026-04-05T01:31:00Z"));
        f.run();
        assertThat(f.kinds()).containsExactly("raise", "clear");
    }

    @Test
    void nobodyIsToldOfWhatWasToldBeforeTheyAsked() {
        f.raised(1, Severity.MAJOR);
        f.run();
        f.clock.forward(Duration.ofMinutes(5));
        f.person("late");
        f.minutes(1);
        assertThat(f.arrived).isEmpty();
        f.raised(2, Severity.MAJOR);
        f.minutes(1);
        assertThat(f.kinds()).containsExactly("raise");
    }

    @Test
    void withoutAMailServerNothingPilesUp() {
        f.person("wren");
        f.mailOpen = false;
        f.raised(1, Severity.MAJOR);
        f.run();
        f.minutes(60);
        assertThat(f.outbox()).isEmpty();
    }

    @Test
    void viewersAndDisabledPeopleAreToldNothing() {
        long gone = f.person("gone");
        f.id("update account set disabled = true where id = ? returning id", gone);
        long viewer = f.person("viewer");
        f.id("update account set role = 'VIEWER', customer_id = ? where id = ? returning id", f.customer, viewer);
        f.raised(1, Severity.CRITICAL);
        f.run();
        assertThat(f.outbox()).isEmpty();
    }

    @Test
    void escalationGoesRoundUntilSomebodyAcknowledges() {
        long first = f.person("first", c -> Choose.from(c, Severity.CRITICAL));
        long second = f.person("second", c -> Choose.hours(Choose.from(c, Severity.CRITICAL), "Sun 03:00-04:00"));
        f.chain(new EscalationChain(
                0, Optional.empty(), Severity.MAJOR, 15, false, java.util.List.of(Set.of(first), Set.of(second))));
        FakeAlarms.Alarm gate = f.raised(1, Severity.MAJOR);
        f.run();
        f.minutes(14);
        assertThat(f.arrived).isEmpty();
        f.minutes(1);
        f.minutes(15);
        f.minutes(15);
        assertThat(f.kinds()).containsExactly("escalation", "escalation", "escalation");
        assertThat(f.arrived).extracting(m -> m.accountId()).containsExactly(first, second, first);
        gate.operator = OperatorState.ACK;
        f.minutes(60);
        assertThat(f.arrived).hasSize(3);
        f.clear(gate);
        f.minutes(11);
        assertThat(f.kinds().subList(3, f.kinds().size()))
                .as("to the first; the second sleeps")
                .containsExactly("clear");
    }

    @Test
    void escalationRestsOutsideOfServiceHoursAndACustomersOwnChainCounts() {
        long everybody = f.person("everybody", c -> Choose.from(c, Severity.CRITICAL));
        long own = f.person("own", c -> Choose.from(c, Severity.CRITICAL));
        f.chain(new EscalationChain(
                0, Optional.empty(), Severity.MINOR, 5, false, java.util.List.of(Set.of(everybody))));
        f.chain(new EscalationChain(
                0, Optional.of(f.customer), Severity.MAJOR, 5, true, java.util.List.of(Set.of(own))));
        f.siteNeeded = false;
        f.raised(1, Severity.MAJOR);
        f.raised(2, Severity.MINOR);
        f.run();
        f.minutes(60);
        assertThat(f.arrived).isEmpty();
        f.siteNeeded = true;
        f.minutes(1);
        assertThat(f.arrived).extracting(m -> m.accountId()).containsExactly(own);
    }

    @Test
    void aDigestComesOnceADayAtItsHour() {
        f.person("wren", c -> Choose.digest(Choose.events(c, Set.of()), Digest.DAILY, 7, 1));
        FakeAlarms.Alarm over = f.raised(1, Severity.MAJOR);
        f.raised(2, Severity.CRITICAL);
        f.run();
        f.clear(over);
        f.clock.set(Instant.parse("2026-03-05T05:59:00Z"));
        f.run();
        assertThat(f.arrived).isEmpty();
        f.minutes(2);
        f.minutes(60);
        assertThat(f.kinds()).containsExactly("digest");
        assertThat(f.arrived.get(0).content().subject()).contains("1 alarm stands, 1 over");
        f.clock.set(Instant.parse("2026-03-06T06:00:00Z"));
        f.run();
        assertThat(f.kinds()).containsExactly("digest", "digest");
        assertThat(f.arrived.get(1).content().subject()).contains("1 alarm stands, 0 over");
    }
}
