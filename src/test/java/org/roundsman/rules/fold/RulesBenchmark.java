package org.roundsman.rules.fold;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.roundsman.alarms.Signal;
import org.roundsman.measure.Reading;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.RuleTarget;

/**
 * Measures the folds: readings of access points with two radios and one network each, one in fifty of them busy. Arguments:
 * number of access points (12000), rounds of each (60). Readings are made before the clock runs.
 */
public final class RulesBenchmark {

    private RulesBenchmark() {}

    public static void main(String[] arguments) {
        int devices = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 12_000;
        int rounds = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 60;
        Tuning.Book book = new Tuning.Book(RuleSet.shipped());
        List<DeviceFold> folds = new ArrayList<>();
        for (int i = 0; i < devices; i++) {
            folds.add(new DeviceFold(i + 1, book.of(new RuleTarget(1, 1 + i / 16, 1, i + 1)), Memory.none()));
        }
        Random random = new Random(7);
        List<Signal> out = new ArrayList<>();
        long nanos = 0;
        Instant start = Instant.parse("2026-03-02T10:00:00Z");
        for (int round = 0; round < rounds; round++) {
            List<Reading> readings = new ArrayList<>(devices);
            for (int i = 0; i < devices; i++) {
                double busy = i % 50 == 0 ? 60 + 30 * random.nextDouble() : 40 * random.nextDouble();
                readings.add(ReadingsFixture.answered(i + 1, start.plusSeconds(60L * round), 12, busy));
            }
            long from = System.nanoTime();
            for (int i = 0; i < devices; i++) {
                folds.get(i).take(readings.get(i), out);
            }
            nanos += System.nanoTime() - from;
        }
        double all = (double) devices * rounds;
        System.out.printf( // the result of a measurement
                "%d access points, %d rounds: %.0f readings a second, %.2f µs each, %d signals%n",
                devices, rounds, all / (nanos / 1e9), nanos / 1e3 / all, out.size());
    }
}
