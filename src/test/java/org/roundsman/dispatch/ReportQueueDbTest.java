package org.roundsman.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.time.Duration;
import java.time.YearMonth;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.roundsman.fleet.CustomerScope;

/** The queue is a table: whatever ends the work, each report is there once and none is lost. */
@Timeout(120)
class ReportQueueDbTest {

    private static final String DATABASE = "report_queue";
    private static final int CUSTOMERS = 100;
    private static final YearMonth MONTH = YearMonth.of(2026, 10);

    private DispatchFixture at;

    @BeforeEach
    void aHundredCustomers() {
        at = DispatchFixture.on(DATABASE);
        for (int i = 0; i < CUSTOMERS; i++) {
            at.customer(String.format(Locale.ROOT, "Invented customer %03d", i), "Europe/Berlin");
        }
    }

    private long count(String state) {
        return at.rows.number("select count(*) from report where state = ?", state);
    }

    @Test
    void aServiceThatEndsInTheMiddleBuildsEachReportOnce() throws InterruptedException {
        assertThat(at.desk.buildAll(MONTH)).isEqualTo(CUSTOMERS);
        CountDownLatch inTheMiddle = new CountDownLatch(1);
        at.making.before = subject -> {
            if (at.making.worked() > CUSTOMERS / 2) {
                inTheMiddle.countDown();
                stuck();
            }
            return subject;
        };
        Thread killed = new Thread(() -> catchThrowable(at::finish), "first-service");
        killed.start();
        assertThat(inTheMiddle.await(60, TimeUnit.SECONDS)).isTrue();
        assertThat(count("BUILDING")).isEqualTo(1);
        assertThat(count("TO_REVIEW")).isEqualTo(CUSTOMERS / 2);

        DispatchFixture anew = at.startedAgain(DATABASE);
        anew.builder.restart();
        assertThat(count("BUILDING")).isZero();
        assertThat(anew.desk.buildAll(MONTH)).as("nothing is missing").isZero();
        anew.finish();
        killed.interrupt();
        killed.join();

        assertThat(count("TO_REVIEW")).isEqualTo(CUSTOMERS);
        assertThat(at.rows.number("select count(*) from report")).isEqualTo(CUSTOMERS);
        assertThat(at.rows.number("select count(distinct customer_id) from report where revision = 1"))
                .isEqualTo(CUSTOMERS);
        assertThat(anew.making.worked())
                .as("what was finished is not built again")
                .isEqualTo(CUSTOMERS / 2);
    }

    /** Until the thread is interrupted. */
    private static void stuck() {
        try {
            new CountDownLatch(1).await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("the service ends", e);
        }
    }

    @Test
    void anAttemptThatWasTakenOverStoresNothing() throws InterruptedException {
        long first = at.desk.month(MONTH).lines().get(0).customerId();
        long id = at.desk.build(first, DispatchFixture.OCTOBER, DispatchFixture.NOVEMBER);
        CountDownLatch goOn = new CountDownLatch(1);
        CountDownLatch begun = new CountDownLatch(1);
        at.making.before = subject -> {
            begun.countDown();
            boolean told = waitFor(goOn);
            assertThat(told).isTrue();
            return subject;
        };
        Thread slow = new Thread(at.builder::step, "slow-service");
        slow.start();
        assertThat(begun.await(30, TimeUnit.SECONDS)).isTrue();
        DispatchFixture anew = at.startedAgain(DATABASE);
        anew.clock.forward(Duration.ofHours(1));
        anew.builder.restart();
        anew.finish();
        String kept = anew.report(id).prints().figures();
        goOn.countDown();
        slow.join();
        assertThat(anew.report(id).prints().figures()).isEqualTo(kept);
        assertThat(at.registry.get("roundsman.reports.built").counter().count()).isZero();
        assertThat(anew.registry.get("roundsman.reports.built").counter().count())
                .isEqualTo(1);
    }

    private static boolean waitFor(CountDownLatch latch) {
        try {
            return latch.await(30, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    @Test
    void oneThatCannotBeBuiltFailsWithItsReasonAndTheOthersGoOn() {
        at.desk.buildAll(MONTH);
        at.making.before = subject -> {
            if (subject.customer().endsWith("007")) {
                throw new IllegalStateException("no such zone:\n Mars/Base");
            }
            return subject;
        };
        at.finish();
        assertThat(count("FAILED")).isEqualTo(1);
        assertThat(count("TO_REVIEW")).isEqualTo(CUSTOMERS - 1);
        KeptReport failed = at.desk.month(MONTH).lines().stream()
                .flatMap(line -> line.report().stream())
                .filter(report -> report.state() == ReportState.FAILED)
                .findFirst()
                .orElseThrow();
        assertThat(failed.customer()).isEqualTo("Invented customer 007");
        assertThat(failed.failure()).isEqualTo("IllegalStateException: no such zone: Mars/Base");
        assertThat(at.shelf.figures(CustomerScope.everyone(), failed.id())).isEmpty();

        at.making.before = subject -> subject;
        assertThat(at.desk.buildAll(MONTH)).as("only the one that failed").isEqualTo(1);
        at.finish();
        assertThat(count("TO_REVIEW")).isEqualTo(CUSTOMERS);
    }

    @Test
    void theMetersTellHowLongItTakes() {
        at.desk.buildAll(MONTH);
        at.finish();
        assertThat(at.registry.get("roundsman.reports.built").counter().count()).isEqualTo(CUSTOMERS);
        assertThat(at.registry.get("roundsman.reports.building").timer().count())
                .isEqualTo(CUSTOMERS);
    }
}
