package org.roundsman.polling;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import org.roundsman.measure.Metric;
import org.roundsman.snmp.Visit;

/** Counts what the rounds do; names begin with {@code roundsman.rounds}. */
final class RoundsMeters {

    private final MeterRegistry registry;
    private final Counter due;
    private final Counter done;
    private final Counter late;
    private final Counter skipped;
    private final Counter extra;
    private final Counter unanswered;
    private final Counter refused;
    private final Counter requests;
    private final Counter timeouts;
    private final Timer lag;
    private final Timer reply;

    RoundsMeters(MeterRegistry registry) {
        this.registry = registry;
        due = counter("due", "Rounds that became due");
        done = counter("done", "Rounds that ended, however they ended");
        late = counter("late", "Rounds that began more than a second after they were due");
        skipped = counter("skipped", "Rounds left out because the one before had not ended");
        extra = counter("extra", "Rounds made out of turn, since the device sent a notification");
        unanswered = counter("unanswered", "Rounds without an answer");
        refused = counter("refused", "Rounds in which the device rejected our credentials");
        requests = counter("requests", "SNMP requests sent, retries included");
        timeouts = counter("timeouts", "SNMP requests without a reply in time");
        lag = timer("lag", "From due to begun");
        reply = timer("reply", "From the round's first request to its reply");
    }

    void watching(Rounds rounds, Admission admission) {
        registry.gauge("roundsman.rounds.devices", rounds, Rounds::devices);
        registry.gauge("roundsman.rounds.inflight", admission, Admission::running);
        registry.gauge("roundsman.rounds.waiting", admission, Admission::waiting);
    }

    void due() {
        due.increment();
    }

    void skipped() {
        skipped.increment();
    }

    void extra() {
        extra.increment();
    }

    void begun(Duration behind) {
        lag.record(behind.isNegative() ? Duration.ZERO : behind);
        if (behind.compareTo(Duration.ofSeconds(1)) > 0) {
            late.increment();
        }
    }

    void ended(Visit visit) {
        done.increment();
        requests.increment(visit.requests());
        timeouts.increment(visit.timeouts());
        switch (visit.outcome().kind()) {
            case UNANSWERED -> unanswered.increment();
            case REFUSED -> refused.increment();
            case ANSWERED ->
                visit.device()
                        .get(Metric.ROUND_TRIP)
                        .ifPresent(ms -> reply.record((long) (ms * 1_000), TimeUnit.MICROSECONDS));
        }
    }

    private Counter counter(String name, String description) {
        return Counter.builder("roundsman.rounds." + name)
                .description(description)
                .register(registry);
    }

    private Timer timer(String name, String description) {
        return Timer.builder("roundsman.rounds." + name)
                .description(description)
                .publishPercentileHistogram()
                .publishPercentiles(0.5, 0.99)
                .minimumExpectedValue(Duration.ofNanos(100_000))
                .maximumExpectedValue(Duration.ofSeconds(30))
                .register(registry);
    }
}
