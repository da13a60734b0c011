package org.roundsman.planned;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.audit.Actor;
import org.roundsman.audit.AuditLog;
import org.roundsman.audit.AuditQuery;
import org.roundsman.audit.AuditTrail;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.planned.PlannedWindow.State;
import org.roundsman.readings.DeviceHistory;

/** Planned work in the database: what is kept, whom it reaches, who may see it, and what the audit says. */
@QuarkusTest
class PlanningDbTest {

    /** 13:00 in Berlin, 07:00 in New York; a Monday. */
    private static final Instant START = Instant.parse("2026-06-01T11:00:00Z");

    private static final CustomerScope ALL = CustomerScope.everyone();
    private static final OptionalLong NONE = OptionalLong.empty();

    @Inject
    DataSource database;

    @Inject
    Targets targets;

    @Inject
    AuditTrail audit;

    @Inject
    AuditLog log;

    @Inject
    Event<PlannedWorkChanged> changed;

    @Inject
    PlannedFixture fixture;

    private final TurnedClock clock = new TurnedClock(START);
    private final Actor actor = new Actor("mara-" + UUID.randomUUID(), 12L, Actor.Via.PAGE, "", "192.0.2.8");
    private Planning planning;
    private PlannedWork work;
    private PlannedBoard board;
    private String name;
    private long customer;
    private long pier;
    private long island;
    private long device;
    private long other;

    @BeforeEach
    void twoSites() {
        planning = new Planning(database, targets, audit, clock, changed);
        work = new PlannedWork(database, clock);
        board = new PlannedBoard(database, clock);
        PlannedFixture.Place place = fixture.place();
        name = place.name();
        customer = place.customer();
        pier = place.pier();
        island = place.island();
        device = place.device();
        other = place.other();
    }

    private <T> T as(Supplier<T> task) {
        return audit.as(actor, () -> QuarkusTransaction.requiringNew().call(task::get));
    }

    private static PlanDraft.Where where(Reach reach, long id) {
        return new PlanDraft.Where(reach, id);
    }

    private static Instant hours(double hours) {
        return START.plusSeconds((long) (hours * 3600));
    }

    private static Timing once(double from, double to) {
        return new Timing.Once(new Stretch(hours(from), hours(to)));
    }

    private static Timing daily(String start, int minutes) {
        return Timing.Repeating.of(
                new Repetition.Daily(),
                LocalTime.parse(start),
                Duration.ofMinutes(minutes),
                LocalDate.parse("2026-05-01"),
                null,
                List.of(LocalDate.parse("2026-06-03")));
    }

    private PlannedWindow add(Reach reach, long id, Timing timing) {
        return as(() -> planning.add(ALL, new PlanDraft(where(reach, id), " New switch ", " because ", timing)));
    }

    private PlannedWindow find(long id) {
        return planning.find(ALL, id).orElseThrow();
    }

    @Test
    void everySortOfTimingComesBackAsItWasStored() {
        Repetition[] repetitions = {
            new Repetition.Daily(),
            new Repetition.Weekly(Set.of(DayOfWeek.SUNDAY, DayOfWeek.TUESDAY)),
            new Repetition.MonthDay(Repetition.LAST),
            new Repetition.MonthWeekday(1, DayOfWeek.SUNDAY)
        };
        for (Repetition how : repetitions) {
            Timing timing = Timing.Repeating.of(
                    how,
                    LocalTime.of(22, 30),
                    Duration.ofMinutes(95),
                    LocalDate.parse("2026-06-01"),
                    LocalDate.parse("2027-06-30"),
                    how instanceof Repetition.Daily ? List.of(LocalDate.parse("2026-07-04")) : List.of());
            PlannedWindow kept = add(Reach.SITE, pier, timing);
            assertThat(find(kept.id())).isEqualTo(kept);
            assertThat(kept.timing()).isEqualTo(timing);
        }
        PlannedWindow kept = add(Reach.DEVICE, device, once(1, 2));
        assertThat(find(kept.id()).timing()).isEqualTo(once(1, 2));
        assertThat(kept.title()).isEqualTo("New switch");
        assertThat(kept.madeBy()).isEqualTo(actor.name());
        assertThat(kept.target().words()).isEqualTo("ap-mast at Pier");
    }

    @Test
    void workReachesTheDeviceTheSiteOrEverySiteOfTheCustomer() {
        add(Reach.DEVICE, device, once(0, 1));
        add(Reach.SITE, pier, once(2, 3));
        add(Reach.CUSTOMER, customer, once(4, 5));
        assertThat(covered(0.5)).containsExactly(true, false, false, false);
        assertThat(covered(1.5)).containsExactly(false, false, false, false);
        assertThat(covered(2.5)).containsExactly(true, true, true, false);
        assertThat(covered(4.5)).containsExactly(true, true, true, true);
        assertThat(work.stretches(pier, OptionalLong.of(device), hours(0.5), hours(4.25)))
                .containsExactly(
                        new Stretch(hours(0.5), hours(1)),
                        new Stretch(hours(2), hours(3)),
                        new Stretch(hours(4), hours(4.25)));
        assertThat(work.ofDevice(other, hours(-9), hours(9)))
                .containsExactly(new Stretch(hours(2), hours(3)), new Stretch(hours(4), hours(5)));
        assertThat(work.next(pier, hours(0))).map(Running::from).contains(hours(2));
        assertThat(work.next(island, hours(0))).map(Running::from).contains(hours(4));
        assertThat(work.current(pier, NONE, hours(2.5))).map(Running::title).contains("New switch");
        assertThat(work.stretches(999_999_999, NONE, hours(0), hours(9))).isEmpty();
    }

    /** The device, the other device of its site, the site, and the other site; also out of the picture of all. */
    private List<Boolean> covered(double hours) {
        Instant at = hours(hours);
        List<Boolean> one = List.of(
                work.covers(pier, OptionalLong.of(device), at),
                work.covers(pier, OptionalLong.of(other), at),
                work.covers(pier, NONE, at),
                work.covers(island, NONE, at));
        PlannedNow now = work.now();
        assertThat(List.of(
                        now.covers(pier, OptionalLong.of(device), at),
                        now.covers(pier, OptionalLong.of(other), at),
                        now.covers(pier, NONE, at),
                        now.covers(island, NONE, at)))
                .isEqualTo(one);
        return one;
    }

    /** 02:00 in Berlin is midnight UTC in June, in New York it is 06:00 UTC. */
    @Test
    void allSitesOfACustomerFollowTheirOwnClocks() {
        add(Reach.CUSTOMER, customer, daily("02:00", 60));
        assertThat(work.stretches(pier, NONE, hours(0), hours(48)))
                .as("not on the skipped 2026-06-03, which would be 37 to 38")
                .containsExactly(new Stretch(hours(13), hours(14)));
        assertThat(work.stretches(island, NONE, hours(0), hours(30)))
                .containsExactly(new Stretch(hours(19), hours(20)));
    }

    @Test
    void endingEndsWhatGoesOnAndNothingElse() {
        PlannedWindow nightly = add(Reach.SITE, pier, daily("14:00", 120));
        assertThat(refused(() -> planning.end(ALL, nightly.id()))).containsOnlyKeys("");
        clock.turn(hours(1.5));
        assertThat(as(() -> planning.end(ALL, nightly.id())).state(hours(1.5))).isEqualTo(State.REPEATING);
        assertThat(find(nightly.id()).course().ends())
                .extracting(PlannedWindow.Ended::by)
                .containsExactly(actor.name());
        assertThat(work.stretches(pier, NONE, hours(0), hours(30)))
                .containsExactly(new Stretch(hours(1), hours(1.5)), new Stretch(hours(25), hours(27)));
        assertThat(refused(() -> planning.end(ALL, nightly.id()))).containsOnlyKeys("");
    }

    @Test
    void cancellingKeepsWhatHasBeenAndTheWindowItself() {
        PlannedWindow nightly = add(Reach.SITE, pier, daily("14:00", 120));
        PlannedWindow later = add(Reach.SITE, pier, once(200, 201));
        clock.turn(hours(26));
        as(() -> planning.cancel(ALL, nightly.id()));
        as(() -> planning.cancel(ALL, later.id()));
        assertThat(work.stretches(pier, NONE, hours(0), hours(300)))
                .containsExactly(new Stretch(hours(1), hours(3)), new Stretch(hours(25), hours(26)));
        assertThat(find(nightly.id()).state(hours(27))).isEqualTo(State.CANCELLED);
        assertThat(find(nightly.id()).course().stoppedBy()).isEqualTo(actor.name());
        assertThat(refused(() -> planning.cancel(ALL, nightly.id()))).containsOnlyKeys("");
        CustomerScope own = CustomerScope.of(customer);
        assertThat(board.past(own, pier, 1, 10).items())
                .extracting(PlannedWindow::id)
                .containsExactly(later.id(), nightly.id());
        assertThat(board.open(own, pier).repeating()).isEmpty();
    }

    /** A repetition that has begun goes on as another window, so that what has been does not change. */
    @Test
    void changingTimesDoesNotChangeThePast() {
        PlannedWindow first = add(Reach.SITE, pier, daily("14:00", 120));
        clock.turn(hours(2));
        PlannedWindow second = as(() -> planning.change(
                ALL, first.id(), new PlanDraft(where(Reach.SITE, pier), "Moved", "", daily("16:00", 60))));
        assertThat(second.id()).isNotEqualTo(first.id());
        assertThat(second.course().replaces()).contains(first.id());
        assertThat(find(first.id()).state(hours(2))).isEqualTo(State.REPLACED);
        assertThat(work.stretches(pier, NONE, hours(0), hours(30)))
                .containsExactly(
                        new Stretch(hours(1), hours(2)),
                        new Stretch(hours(3), hours(4)),
                        new Stretch(hours(27), hours(28)));
    }

    @Test
    void aChangeThatLeavesThePastAloneStaysInTheWindow() {
        PlannedWindow nightly = add(Reach.SITE, pier, daily("14:00", 120));
        clock.turn(hours(2));
        Timing.Repeating same = (Timing.Repeating) nightly.timing();
        Timing lastDay = Timing.Repeating.of(
                same.how(), same.start(), same.length(), same.firstDay(), LocalDate.parse("2026-06-02"), List.of());
        PlannedWindow after = as(() ->
                planning.change(ALL, nightly.id(), new PlanDraft(where(Reach.SITE, pier), "Twice only", "", lastDay)));
        assertThat(after.id()).isEqualTo(nightly.id());
        assertThat(find(nightly.id())).isEqualTo(after);
        assertThat(work.stretches(pier, NONE, hours(0), hours(300)))
                .containsExactly(new Stretch(hours(1), hours(3)), new Stretch(hours(25), hours(27)));
    }

    @Test
    void workThatGoesOnIsMadeLongerButItsBeginningStays() {
        PlannedWindow going =
                as(() -> planning.start(ALL, where(Reach.SITE, pier), Duration.ofHours(1), "Work on site"));
        clock.turn(hours(0.5));
        PlannedWindow longer = as(() -> planning.change(
                ALL, going.id(), new PlanDraft(where(Reach.SITE, pier), "Work on site", "", once(0, 3))));
        assertThat(longer.id()).isEqualTo(going.id());
        assertThat(work.current(pier, NONE, hours(2))).isPresent();
        assertThat(refused(() -> planning.change(
                        ALL, going.id(), new PlanDraft(where(Reach.SITE, pier), "W", "", once(0.25, 3)))))
                .containsOnlyKeys("from");
        assertThat(refused(() -> planning.change(
                        ALL, going.id(), new PlanDraft(where(Reach.SITE, pier), "W", "", once(0, 0.25)))))
                .containsOnlyKeys("from");
        clock.turn(hours(4));
        assertThat(refused(() ->
                        planning.change(ALL, going.id(), new PlanDraft(where(Reach.SITE, pier), "W", "", once(0, 9)))))
                .containsOnlyKeys("");
    }

    @Test
    void twoTapsStartItOnce() {
        PlannedWindow one = as(() -> planning.start(ALL, where(Reach.SITE, pier), Duration.ofHours(2), "Work"));
        clock.turn(hours(0.001));
        PlannedWindow two = as(() -> planning.start(ALL, where(Reach.SITE, pier), Duration.ofHours(2), "Work"));
        assertThat(two.id()).isEqualTo(one.id());
        clock.turn(hours(0.1));
        assertThat(as(() -> planning.start(ALL, where(Reach.SITE, pier), Duration.ofHours(2), "Work"))
                        .id())
                .isNotEqualTo(one.id());
    }

    @Test
    void othersNeitherSeeNorTouchIt() {
        PlannedWindow mine = add(Reach.SITE, pier, once(0, 9));
        CustomerScope stranger = CustomerScope.of(customer + 100_000);
        assertThat(planning.find(stranger, mine.id())).isEmpty();
        assertThat(board.open(stranger, null).running()).isEmpty();
        assertThat(board.open(stranger, pier).running()).isEmpty();
        assertThat(board.after(stranger, null, 0, 10)).isEmpty();
        assertThat(refused(() -> planning.end(stranger, mine.id()))).containsOnlyKeys("id");
        assertThat(refused(() -> planning.cancel(stranger, mine.id()))).containsOnlyKeys("id");
        assertThat(refused(
                        () -> planning.add(stranger, new PlanDraft(where(Reach.SITE, pier), "Work", "", once(1, 2)))))
                .containsEntry("site", "there is no such site");
        assertThat(board.open(CustomerScope.of(customer), null).running())
                .extracting(PlannedWindow::id)
                .containsExactly(mine.id());
    }

    private java.util.Map<String, String> refused(Supplier<?> task) {
        return catchThrowableOfType(InputRejected.class, () -> as(task)).faults();
    }

    @Test
    void everyChangeIsInTheAuditOnce() {
        PlannedWindow going =
                as(() -> planning.start(ALL, where(Reach.DEVICE, device), Duration.ofHours(1), "Work on site"));
        clock.turn(hours(0.5));
        as(() -> planning.change(
                ALL, going.id(), new PlanDraft(where(Reach.DEVICE, device), "Work on mast", "", once(0, 2))));
        as(() -> planning.end(ALL, going.id()));
        PlannedWindow nightly = add(Reach.CUSTOMER, customer, daily("14:00", 120));
        clock.turn(hours(2));
        PlannedWindow moved = as(() -> planning.change(
                ALL, nightly.id(), new PlanDraft(nightlyWhere(), "New switch", "because", daily("16:00", 60))));
        as(() -> planning.cancel(ALL, moved.id()));
        String all = "all sites of " + name;
        String when = " for %s, from 2026-05-01, not on 2026-06-03";
        assertThat(said())
                .containsExactly(
                        "added Work on site: of=ap-mast at Pier, title=Work on site, when=once, 2026-06-01T11:00:00Z to"
                                + " 2026-06-01T12:00:00Z",
                        "changed Work on mast: title=Work on mast, when=once, 2026-06-01T11:00:00Z to"
                                + " 2026-06-01T13:00:00Z",
                        "ended Work on mast: ",
                        "added New switch: of=" + all + ", title=New switch, reason=because, when=every day at 14:00"
                                + when.formatted("2 h"),
                        "replaced New switch: ",
                        "added New switch: of=" + all + ", title=New switch, reason=because, when=every day at 16:00"
                                + when.formatted("1 h"),
                        "cancelled New switch: ");
    }

    private PlanDraft.Where nightlyWhere() {
        return where(Reach.CUSTOMER, customer);
    }

    private List<String> said() {
        List<String> said = new java.util.ArrayList<>(log.find(query(), Optional.empty(), 100).stream()
                .map(entry -> {
                    assertThat(entry.subject().customerId()).isEqualTo(customer);
                    assertThat(entry.subject().kind()).isEqualTo("planned work");
                    return entry.action() + " " + entry.subject().name() + ": "
                            + String.join(
                                    ", ",
                                    entry.changes().stream()
                                            .map(change -> change.field() + "=" + change.fresh())
                                            .toList());
                })
                .toList());
        java.util.Collections.reverse(said);
        return said;
    }

    private AuditQuery query() {
        return new AuditQuery("", actor.name(), "planned work", null, null, "", null, null);
    }

    /** A device that leaves the fleet takes no window of its site with it, and its own reaches nobody any more. */
    @Test
    void aWindowOutlivesItsDevice() {
        PlannedWindow window = add(Reach.DEVICE, device, once(0, 9));
        fixture.removeDevice(device);
        assertThat(find(window.id()).target().words()).isEqualTo("ap-mast at Pier");
        assertThat(work.covers(pier, OptionalLong.of(other), hours(1))).isFalse();
        assertThat(work.covers(pier, NONE, hours(1))).isFalse();
        assertThat(board.open(CustomerScope.of(customer), pier).running()).hasSize(1);
    }

    @Test
    void theAvailabilityOfADeviceLeavesPlannedTimeOut() {
        add(Reach.SITE, pier, once(1, 3));
        add(Reach.DEVICE, device, once(2, 4));
        DeviceHistory history = new DeviceHistory(database, work);
        assertThat(history.availability(device, hours(0), hours(10)).planned()).isEqualTo(Duration.ofHours(3));
        assertThat(history.availability(other, hours(0), hours(10)).planned()).isEqualTo(Duration.ofHours(2));
        assertThat(history.availability(other, hours(0), hours(10)).unwatched()).isEqualTo(Duration.ofHours(8));
    }

    @Test
    void theListsAreInTheOrderOfTheirUse() {
        PlannedWindow soon = add(Reach.SITE, pier, once(3, 4));
        PlannedWindow later = add(Reach.DEVICE, device, once(9, 10));
        PlannedWindow longer = add(Reach.SITE, pier, once(-1, 6));
        PlannedWindow shorter = add(Reach.CUSTOMER, customer, once(-1, 1));
        PlannedWindow nightly = add(Reach.SITE, pier, daily("02:00", 60));
        PlannedWindow elsewhere = add(Reach.SITE, island, once(3, 4));
        PlannedBoard.Open open = board.open(CustomerScope.of(customer), pier);
        assertThat(open.running()).extracting(PlannedWindow::id).containsExactly(shorter.id(), longer.id());
        assertThat(open.coming()).extracting(PlannedWindow::id).containsExactly(soon.id(), later.id());
        assertThat(open.repeating()).extracting(PlannedWindow::id).containsExactly(nightly.id());
        assertThat(board.open(CustomerScope.of(customer), null).coming())
                .extracting(PlannedWindow::id)
                .containsExactly(soon.id(), elsewhere.id(), later.id());
        for (int i = 0; i < 5; i++) {
            add(Reach.SITE, island, once(-i - 2, -i - 1));
        }
        assertThat(board.past(CustomerScope.of(customer), null, 2, 2).items())
                .extracting(one -> one.over().orElseThrow())
                .containsExactly(hours(-3), hours(-4));
        assertThat(board.past(CustomerScope.of(customer), pier, 1, 2).total()).isZero();
    }
}
