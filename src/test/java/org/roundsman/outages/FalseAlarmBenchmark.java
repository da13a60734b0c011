package org.roundsman.outages;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.roundsman.alarms.AlarmType;

/** How many alarms of healthy devices lost datagrams make in four weeks. Not run by the tests. Option: weeks (4). */
public final class FalseAlarmBenchmark {

    private static final long SEED = 20_261;

    private FalseAlarmBenchmark() {}

    public static void main(String[] args) {
        int weeks = args.length > 0 ? Integer.parseInt(args[0]) : 4;
        for (double loss : List.of(0.0, 0.01, 0.02, 0.05, 0.10)) {
            long start = System.nanoTime();
            QuietWeeks.Tally tally = QuietWeeks.run(new QuietWeeks.Plan(loss, weeks, SEED, List.of()));
            Map<AlarmType, Integer> byType = new TreeMap<>();
            tally.raised().forEach((key, times) -> byType.merge(key.type(), times, Integer::sum));
            System.out.printf(
                    "loss %.0f %%: %d rounds, %d unanswered, %d restarts, raised %s, while restarting %d; %.1f s%n",
                    100 * loss,
                    tally.rounds(),
                    tally.missed(),
                    tally.restarts(),
                    byType,
                    tally.withRestart().values().stream().mapToInt(n -> n).sum(),
                    (System.nanoTime() - start) / 1e9);
        }
    }
}
