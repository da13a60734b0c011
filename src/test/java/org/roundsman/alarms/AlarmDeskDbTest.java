package org.roundsman.alarms;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.roundsman.alarms.DeskFixture.NOON;
import static org.roundsman.alarms.DeskFixture.clear;
import static org.roundsman.alarms.DeskFixture.raise;
import static org.roundsman.alarms.DeskFixture.silent;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;

/** What the desk keeps of signals, verdicts and deeds, in a real PostgreSQL. */
class AlarmDeskDbTest {

    private static final CustomerScope ALL = CustomerScope.everyone();

    private DeskFixture f;
    private AlarmKey lobby;

    @BeforeEach
    void aDesk() {
        f = new DeskFixture("alarm_desk");
        lobby = silent(f.accessPoint("ap-lobby"));
    }

    private OpenAlarm theOne() {
        assertThat(f.fleet.count("alarm")).isEqualTo(1);
        return f.book.find(ALL, f.fleet.id("select id from alarm")).orElseThrow();
    }

    private List<Optional<Severity>> history() {
        return f.book.changes(ALL, theOne().id()).stream()
                .map(AlarmChange::severity)
                .toList();
    }

    /** RFC 8632: same key, same alarm; the status-change list has the newest first. */
    @Test
    void aRaiseInAnotherSeverityIsTheSameAlarm() {
        f.accept(raise(lobby, Severity.MINOR, 0, "One."), raise(lobby, Severity.MAJOR, 60, "Two."));
        assertThat(theOne().severity()).isEqualTo(Severity.MAJOR);
        assertThat(theOne().raised()).isEqualTo(NOON);
        assertThat(theOne().resourceName()).isEqualTo("ap-lobby");
        assertThat(theOne().site()).isEqualTo("Mill Lane");
        assertThat(history()).containsExactly(Optional.of(Severity.MAJOR), Optional.of(Severity.MINOR));
        assertThat(f.told).containsExactly(Set.of(theOne().id()));
    }

    @Test
    void clearKeepsSeverityAndOperatorState() {
        f.accept(raise(lobby, Severity.MAJOR, 0, "Silent."));
        f.desk.acknowledge(ALL, theOne().id(), "on it");
        f.accept(clear(lobby, 600, "Answers again after 10 min."));
        OpenAlarm alarm = theOne();
        assertThat(alarm.active()).isFalse();
        assertThat(alarm.operator()).isEqualTo(OperatorState.ACK);
        assertThat(alarm.severity()).isEqualTo(Severity.MAJOR);
        assertThat(alarm.text()).isEqualTo("Answers again after 10 min.");
        assertThat(f.book.recentlyCleared(ALL, NOON)).extracting(OpenAlarm::id).containsExactly(alarm.id());
        assertThat(f.book.recentlyCleared(ALL, NOON.plusSeconds(601))).isEmpty();
    }

    @Test
    void whatIsClearedCanBeNotedButNotDealtWith() {
        f.accept(raise(lobby, Severity.MAJOR, 0, "Silent."), clear(lobby, 600, "Answers again."));
        long id = theOne().id();
        List<Runnable> deeds = List.of(
                () -> f.desk.acknowledge(ALL, id, ""),
                () -> f.desk.take(ALL, id),
                () -> f.desk.close(ALL, id, "done"),
                () -> f.desk.shelve(ALL, id, NOON.plusSeconds(3600), "later"));
        for (Runnable deed : deeds) {
            assertThatThrownBy(deed::run).isInstanceOfSatisfying(InputRejected.class, e -> assertThat(
                            e.faults().get("state"))
                    .startsWith("it is cleared"));
        }
        assertThat(theOne().operator()).isEqualTo(OperatorState.NONE);
        f.desk.note(ALL, id, "it was the cleaner");
        assertThat(f.book.acts(ALL, id)).extracting(AlarmAct::kind).containsExactly(AlarmAct.Kind.NOTE);
    }

    @Test
    void aSecondRaiseBeginsASecondEpisodeOfTheSameAlarm() {
        f.accept(raise(lobby, Severity.MAJOR, 0, "Silent."));
        f.desk.take(ALL, theOne().id());
        f.accept(clear(lobby, 60, "Back."), raise(lobby, Severity.MAJOR, 120, "Silent again."));
        assertThat(theOne().active()).isTrue();
        assertThat(theOne().raised()).isEqualTo(NOON.plusSeconds(120));
        assertThat(theOne().operator()).isEqualTo(OperatorState.NONE);
        assertThat(theOne().takenBy()).isEmpty();
        assertThat(history())
                .containsExactly(Optional.of(Severity.MAJOR), Optional.empty(), Optional.of(Severity.MAJOR));
        List<Episode> episodes = f.book.episodes(ALL, theOne().id());
        assertThat(episodes).hasSize(2);
        assertThat(episodes.get(1).duration(f.clock.instant())).isEqualTo(Duration.ofSeconds(60));
        assertThat(f.book.episode(episodes.get(1).id()).orElseThrow().operator())
                .isEqualTo(OperatorState.ACK);
        assertThat(f.book.episode(episodes.get(1).id()).orElseThrow().takenBy()).isEqualTo("wren");
    }

    @Test
    void aClearOfAnUnknownKeyAndARaiseOfARemovedDeviceAreIgnored() {
        f.accept(clear(lobby, 0, "Fine."), raise(silent(987_654), Severity.MAJOR, 0, "Silent."));
        assertThat(f.fleet.count("alarm")).isZero();
        assertThat(f.told).isEmpty();
    }

    @Test
    void whatIsKnownIsNotWrittenAgain() {
        f.accept(raise(lobby, Severity.MAJOR, 0, "Silent for 3 min."));
        List<List<Object>> before = f.fleet.rows("select xmin::text from alarm_episode");
        f.accept(
                raise(lobby, Severity.MAJOR, 30, "Silent for 4 min."),
                raise(lobby, Severity.MAJOR, 90, "Silent for 3 min."));
        assertThat(f.fleet.rows("select xmin::text from alarm_episode")).isEqualTo(before);
        f.accept(raise(lobby, Severity.MAJOR, 100, "Silent for 5 min."));
        assertThat(theOne().text()).isEqualTo("Silent for 5 min.");
        assertThat(history()).hasSize(1);
    }

    @Test
    void numbersOfChangesRiseAcrossAlarmsAndNoneIsMissed() {
        AlarmKey attic = silent(f.accessPoint("ap-attic"));
        f.accept(raise(lobby, Severity.MAJOR, 0, "1"), raise(attic, Severity.MINOR, 0, "2"), clear(lobby, 5, "3"));
        f.accept(raise(lobby, Severity.MAJOR, 9, "4"));
        List<AlarmChange> all = f.book.changesAfter(0, 100);
        assertThat(all).extracting(AlarmChange::text).containsExactly("1", "2", "3", "4");
        assertThat(f.book.changesAfter(all.get(1).id(), 1))
                .extracting(AlarmChange::text)
                .containsExactly("3");
    }

    private Verdict caused(AlarmKey key, AlarmKey by, Set<Long> affected) {
        Impact impact = new Impact(OptionalInt.of(4), OptionalInt.of(12), OptionalInt.empty(), 2, true);
        return new Verdict(
                key,
                CauseKind.UPLINK_LOST,
                Optional.ofNullable(by),
                List.of("Silent since 12:00."),
                impact,
                affected,
                true);
    }

    @Test
    void verdictsTieAlarmsToTheirCause() {
        AlarmKey uplink = AlarmKey.of(AlarmType.UPLINK_LOST, Resource.site(f.site));
        long device = lobby.resource().id();
        f.desk.accept(
                List.of(raise(lobby, Severity.MAJOR, 0, "Silent."), raise(uplink, Severity.CRITICAL, 0, "Lost.")),
                List.of(caused(lobby, uplink, Set.of()), caused(uplink, null, Set.of(device))));
        OpenAlarm cause = f.book.active().get(uplink);
        assertThat(cause.pointing()).isEqualTo(1);
        assertThat(cause.impact().clients()).hasValue(16);
        assertThat(cause.evidence()).containsExactly("Silent since 12:00.");
        assertThat(f.book.active().get(lobby).causedBy()).hasValue(cause.id());
        assertThat(f.book.explainedBy(ALL, cause.id()))
                .extracting(OpenAlarm::key)
                .containsExactly(lobby);
        assertThat(f.book.episodes(ALL, cause.id()).get(0).affected())
                .containsExactly(new Episode.Affected(device, "ap-lobby"));
        int told = f.told.size();
        f.desk.accept(List.of(), List.of(caused(lobby, uplink, Set.of()), caused(uplink, null, Set.of(device))));
        assertThat(f.told).hasSize(told);
        f.desk.accept(List.of(), List.of(caused(lobby, null, Set.of())));
        assertThat(f.book.active().get(lobby).causedBy()).isEmpty();
    }

    @Test
    void plannedWorkIsMarkedAndTakenBackAndRemembered() {
        f.accept(raise(lobby, Severity.MAJOR, 0, "Silent."));
        f.desk.plannedNow(Set.of(theOne().id()));
        assertThat(theOne().planned()).isTrue();
        f.desk.plannedNow(Set.of());
        assertThat(theOne().planned()).isFalse();
        assertThat(f.book.episodes(ALL, theOne().id()).get(0).wasPlanned()).isTrue();
    }

    /** RFC 8632: closing is the operator's opinion and does not set is-cleared. */
    @Test
    void closedIsStillActiveAndOpensAgainWhenItGetsWorse() {
        f.accept(raise(lobby, Severity.MINOR, 0, "Silent."));
        f.desk.close(ALL, theOne().id(), "known");
        assertThat(theOne().active()).isTrue();
        assertThat(f.book.open(ALL)).isEmpty();
        f.accept(raise(lobby, Severity.CRITICAL, 60, "Worse."));
        assertThat(f.book.open(ALL)).hasSize(1);
        assertThat(f.book.acts(ALL, theOne().id()))
                .extracting(AlarmAct::kind)
                .containsExactly(AlarmAct.Kind.REOPEN, AlarmAct.Kind.CLOSE);
    }

    @Test
    void aCustomerIsShownNoNamesReasonsAndNotesOfTheFirm() {
        f.accept(raise(lobby, Severity.MAJOR, 0, "Silent."));
        f.desk.note(ALL, theOne().id(), "the landlord is difficult");
        f.desk.shelve(ALL, theOne().id(), NOON.plusSeconds(3600), "waiting for the landlord");
        CustomerScope own = CustomerScope.of(theOne().customerId().getAsLong());
        OpenAlarm shown = f.book.find(own, theOne().id()).orElseThrow();
        assertThat(theOne().operatorReason()).isEqualTo("waiting for the landlord");
        assertThat(shown.operator()).isEqualTo(OperatorState.SHELVED);
        assertThat(shown.operatorReason() + shown.operatorBy() + shown.takenBy())
                .isEmpty();
        assertThat(f.book.acts(own, theOne().id())).isEmpty();
        assertThat(f.book.open(own)).extracting(OpenAlarm::operatorReason).containsExactly("");
    }

    @Test
    void aShelfHoldsOverEpisodesAndEndsByItself() {
        f.accept(raise(lobby, Severity.MAJOR, 0, "Silent."));
        f.desk.shelve(ALL, theOne().id(), NOON.plusSeconds(3600), "builders on site");
        f.accept(clear(lobby, 60, "Back."), raise(lobby, Severity.MAJOR, 120, "Silent."));
        assertThat(theOne().operator()).isEqualTo(OperatorState.SHELVED);
        assertThat(theOne().operatorReason()).isEqualTo("builders on site");
        assertThatThrownBy(() -> f.desk.acknowledge(ALL, theOne().id(), "")).isInstanceOf(InputRejected.class);
        f.clock.set(NOON.plusSeconds(3599));
        f.desk.tidy();
        assertThat(theOne().operator()).isEqualTo(OperatorState.SHELVED);
        f.clock.set(NOON.plusSeconds(3600));
        f.desk.tidy();
        assertThat(theOne().operator()).isEqualTo(OperatorState.NONE);
        assertThat(f.book.acts(ALL, theOne().id()).get(0).by()).isEqualTo("roundsman");
    }

    @Test
    void everyDeedIsAudited() {
        f.accept(raise(lobby, Severity.MAJOR, 0, "Silent."));
        long id = theOne().id();
        f.desk.take(ALL, id);
        f.desk.take(ALL, id);
        f.desk.note(ALL, id, "called the site");
        f.desk.shelve(ALL, id, NOON.plusSeconds(60), "later");
        f.desk.unshelve(ALL, id);
        f.desk.close(ALL, id, "");
        assertThat(f.fleet.rows("select action, actor, subject, subject_id, customer_id from audit_entry order by id"))
                .extracting(List::toString)
                .containsExactly(
                        "[took it, wren, alarm, " + id + ", " + f.customer + "]",
                        "[noted, wren, alarm, " + id + ", " + f.customer + "]",
                        "[shelved, wren, alarm, " + id + ", " + f.customer + "]",
                        "[took off the shelf, wren, alarm, " + id + ", " + f.customer + "]",
                        "[closed, wren, alarm, " + id + ", " + f.customer + "]");
        assertThat(f.fleet.count("alarm_act")).isEqualTo(5);
    }

    @Test
    void nobodyActsOnAnothersAlarm() {
        f.accept(raise(lobby, Severity.MAJOR, 0, "Silent."));
        CustomerScope other = CustomerScope.of(f.fleet.customer("Orrin & Vale"));
        long id = theOne().id();
        assertThat(f.desk.take(other, id)).isFalse();
        assertThat(f.book.find(other, id)).isEmpty();
        assertThat(f.book.changes(other, id)).isEmpty();
        assertThat(f.book.episodes(other, id)).isEmpty();
        assertThat(f.book.open(other)).isEmpty();
        assertThat(f.book.find(CustomerScope.of(f.customer), id)).isPresent();
        assertThat(f.fleet.count("audit_entry")).isZero();
    }

    @Test
    void removedDevicesLeaveAReadableClearedAlarm() {
        f.accept(raise(lobby, Severity.MAJOR, 0, "Silent."));
        f.fleet.run("update device set name = 'ap-foyer'");
        f.desk.tidy();
        assertThat(theOne().resourceName()).isEqualTo("ap-foyer");
        f.fleet.run("delete from device");
        f.clock.set(NOON.plusSeconds(60));
        f.desk.tidy();
        assertThat(theOne().active()).isFalse();
        assertThat(theOne().text()).isEqualTo("The device was removed from Roundsman.");
        assertThat(theOne().resourceName()).isEqualTo("ap-foyer");
        int told = f.told.size();
        f.desk.tidy();
        assertThat(f.told).hasSize(told);
    }

    @Test
    void twoThousandSignalsComeInAtOnce() {
        List<Signal> signals = new ArrayList<>();
        List<Verdict> verdicts = new ArrayList<>();
        AlarmKey uplink = AlarmKey.of(AlarmType.UPLINK_LOST, Resource.site(f.site));
        signals.add(raise(uplink, Severity.CRITICAL, 0, "Lost."));
        for (int n = 0; n < 2_000; n++) {
            AlarmKey key = silent(f.accessPoint("ap-" + n));
            signals.add(raise(key, Severity.MAJOR, 0, "Silent."));
            verdicts.add(caused(key, uplink, Set.of()));
        }
        f.desk.accept(signals, verdicts);
        assertThat(f.book.active()).hasSize(2_001);
        assertThat(f.book.active().get(uplink).pointing()).isEqualTo(2_000);
        f.desk.accept(signals, verdicts);
        assertThat(f.fleet.count("alarm_change")).isEqualTo(2_001);
        assertThat(f.told).hasSize(1);
    }
}
