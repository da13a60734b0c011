package org.roundsman.boot.bench;

import java.time.Duration;

/**
 * What to measure.
 *
 * @param accessPoints size of the invented fleet that answers
 * @param seed which fleet; the same as that of the agents
 * @param port UDP port of the agents
 * @param seconds how long to measure, after the warm-up
 * @param rate rounds a second that the timetable asks for; 0 for as many as will go
 */
record BenchOptions(int accessPoints, long seed, int port, int seconds, int rate) {

    static BenchOptions parse(String... arguments) {
        BenchOptions options = new BenchOptions(2000, 1, 16161, 60, 0);
        for (int i = 0; i + 1 < arguments.length; i += 2) {
            options = options.with(arguments[i], Integer.parseInt(arguments[i + 1]));
        }
        return options;
    }

    private BenchOptions with(String name, int value) {
        return switch (name) {
            case "--access-points" -> new BenchOptions(value, seed, port, seconds, rate);
            case "--seed" -> new BenchOptions(accessPoints, value, port, seconds, rate);
            case "--port" -> new BenchOptions(accessPoints, seed, value, seconds, rate);
            case "--seconds" -> new BenchOptions(accessPoints, seed, port, value, rate);
            case "--rate" -> new BenchOptions(accessPoints, seed, port, seconds, value);
            default -> throw new IllegalArgumentException("There is no option \"" + name + "\"");
        };
    }

    /** The interval at which so many devices make the wished rate; never below the shortest that targets may have. */
    Duration interval(int devices) {
        Duration shortest = Duration.ofSeconds(1);
        if (rate == 0) {
            return shortest;
        }
        Duration wished = Duration.ofMillis(devices * 1000L / rate);
        return wished.compareTo(shortest) < 0 ? shortest : wished;
    }
}
