package org.roundsman.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.dispatch.work.Schedule;
import org.roundsman.fleet.InputRejected;
import org.roundsman.reports.ReportLook.PaperSize;

/** Plans build past months by themselves, each once. Offsets of zones are those of the IANA time zone database. */
class ReportScheduleDbTest {

    private DispatchFixture at;
    private Schedule schedule;

    @BeforeEach
    void noPlans() {
        at = DispatchFixture.on("report_schedule");
        schedule = new Schedule(at.parts);
    }

    private void active(long customer, int day, int hour, String zone) {
        at.plans.save(customer, at.draft(true, day, hour, zone));
    }

    private int lookAt(String moment) {
        at.clock.turn(moment);
        return schedule.look();
    }

    private List<LocalDate> months(long customer) {
        return at.rows.list(
                "select from_on from report where customer_id = ? order by id",
                row -> row.getObject(1, LocalDate.class),
                customer);
    }

    @Test
    void aMonthIsBuiltOnItsDayAndHourAndOnce() {
        at.clock.turn("2026-10-20T12:00:00Z");
        long customer = at.customer("Pebblegate Dental", "Europe/London");
        active(customer, 3, 6, "Europe/Berlin");
        assertThat(lookAt("2026-10-20T12:00:01Z"))
                .as("not the month before it began")
                .isZero();
        assertThat(lookAt("2026-11-03T04:59:59Z")).isZero();
        assertThat(lookAt("2026-11-03T05:00:00Z")).as("06:00 in Berlin").isEqualTo(1);
        assertThat(lookAt("2026-11-03T05:01:00Z")).isZero();
        assertThat(lookAt("2026-12-03T05:00:00Z")).isEqualTo(1);
        assertThat(months(customer)).containsExactly(LocalDate.of(2026, 10, 1), LocalDate.of(2026, 11, 1));
    }

    @Test
    void anHourThatIsLeftOutOrComesTwiceBuildsOnce() {
        // Berlin: 2026-03-29 goes from 02:00 to 03:00 (01:00 UTC); 2026-10-25 from 03:00 back to 02:00, so that 02:00
        // comes at
        // 00:00 and at 01:00 UTC. New York: 2026-03-08, 02:00 to 03:00 (07:00 UTC).
        at.clock.turn("2026-03-01T12:00:00Z");
        long york = at.customer("Tidewater Books", "America/New_York");
        active(york, 8, 2, "America/New_York");
        assertThat(lookAt("2026-03-08T06:59:59Z")).isZero();
        assertThat(lookAt("2026-03-08T07:00:00Z"))
                .as("03:00, where 02:00 is left out")
                .isEqualTo(1);
        assertThat(lookAt("2026-03-08T08:00:00Z")).isZero();
        at.rows.run("delete from report_plan");

        at.clock.turn("2026-10-20T12:00:00Z");
        long berlin = at.customer("Saltmarsh Ferry Line", "Europe/Berlin");
        active(berlin, 25, 2, "Europe/Berlin");
        assertThat(lookAt("2026-10-24T23:59:59Z")).isZero();
        assertThat(lookAt("2026-10-25T00:00:00Z")).as("02:00 the first time").isEqualTo(1);
        assertThat(lookAt("2026-10-25T01:00:00Z")).as("02:00 the second time").isZero();
    }

    @Test
    void monthsThatWereMissedAreBuiltAfterwards() {
        at.clock.turn("2026-08-10T12:00:00Z");
        long customer = at.customer("Pebblegate Dental", "Europe/London");
        active(customer, 3, 6, "Europe/London");
        assertThat(lookAt("2026-11-01T12:00:00Z"))
                .as("August was due on 3 September, September on 3 October")
                .isEqualTo(2);
        assertThat(months(customer)).containsExactly(LocalDate.of(2026, 8, 1), LocalDate.of(2026, 9, 1));
        assertThat(lookAt("2026-11-01T12:01:00Z")).isZero();
    }

    @Test
    void nothingIsBuiltBeforeTheMonthIsOverAtEachSite() {
        at.clock.turn("2026-10-20T12:00:00Z");
        long customer = at.customer("Pebblegate Dental", "Pacific/Auckland", "Pacific/Honolulu");
        active(customer, 1, 0, "Pacific/Auckland");
        assertThat(lookAt("2026-10-31T11:00:00Z"))
                .as("due: midnight in Auckland, UTC+13")
                .isZero();
        assertThat(lookAt("2026-11-01T10:59:59Z")).as("Honolulu, UTC-10").isZero();
        assertThat(lookAt("2026-11-01T11:00:00Z")).isEqualTo(1);
    }

    @Test
    void aPlanThatIsSwitchedOffBuildsNothingAndCatchesUpNothing() {
        at.clock.turn("2026-08-10T12:00:00Z");
        long customer = at.customer("Pebblegate Dental", "Europe/London");
        active(customer, 3, 6, "Europe/London");
        at.plans.save(customer, at.draft(false, 3, 6, "Europe/London"));
        assertThat(lookAt("2026-10-10T12:00:00Z")).isZero();
        active(customer, 3, 6, "Europe/London");
        assertThat(lookAt("2026-10-10T12:01:00Z")).isZero();
        assertThat(lookAt("2026-11-03T06:00:00Z")).isEqualTo(1);
        assertThat(months(customer)).containsExactly(LocalDate.of(2026, 10, 1));
    }

    @Test
    void whatWasBuiltByHandIsNotBuiltAgain() {
        at.clock.turn("2026-10-20T12:00:00Z");
        long customer = at.customer("Pebblegate Dental", "Europe/London");
        long bare = at.customer("Without a site");
        active(customer, 3, 6, "Europe/London");
        active(bare, 3, 6, "Europe/London");
        at.clock.turn("2026-11-02T12:00:00Z");
        at.built(customer);
        assertThat(lookAt("2026-11-03T06:00:00Z")).isZero();
        assertThat(months(customer)).hasSize(1);
        assertThat(months(bare)).isEmpty();
    }

    @Test
    void aCustomerWithoutAPlanHasOneThatDoesNothing() {
        long customer = at.customer("Pebblegate Dental", "Europe/Lisbon", "Europe/London");
        ReportPlan plan = at.plans.of(customer);
        assertThat(plan.active()).isFalse();
        assertThat(plan.approval()).isTrue();
        assertThat(plan.zone().getId()).isEqualTo("Europe/Lisbon");
        assertThat(at.plans.all()).containsExactly(plan);
        at.plans.save(customer, at.draft(true, 28, 23, "Europe/London", "owner@pebblegate.example"));
        assertThat(at.plans.all()).singleElement().satisfies(kept -> {
            assertThat(kept).isEqualTo(at.plans.of(customer));
            assertThat(kept.recipients()).containsExactly("owner@pebblegate.example");
        });
    }

    @Test
    void whatCannotBeTakenIsNamed() {
        long customer = at.customer("Pebblegate Dental", "Europe/London");
        PlanDraft wrong = new PlanDraft(
                true, 29, 24, "Mars/Base", "xx", PaperSize.A4, List.of("a@b.example", "nobody"), true, false, 5);
        assertThatThrownBy(() -> at.plans.save(customer, wrong))
                .isInstanceOfSatisfying(InputRejected.class, e -> assertThat(e.faults())
                        .containsOnlyKeys("day", "hour", "keepMonths", "zone", "language", "recipients"));
        assertThatThrownBy(() -> at.plans.save(-1, at.draft(false, 3, 6, "Europe/London")))
                .isInstanceOfSatisfying(InputRejected.class, e -> assertThat(e.faults())
                        .isEqualTo(Map.of("customer", "this customer is not there any more")));
    }
}
