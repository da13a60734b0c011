package org.roundsman.demo;

import java.net.InetSocketAddress;
import java.time.Clock;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;

/** The program in its role of invented agents: nothing but agents, without a database or pages. */
public final class AgentsMain {

    private static final String USAGE = "options: --access-points N (" + DemoFleet.SMALLEST + " to " + DemoFleet.LARGEST
            + "), --seed S, --port P," + " --notify ADDRESS:PORT (where notifications go; none without it)";

    /** What was asked for on the command line. */
    record Options(int accessPoints, long seed, int port, Optional<InetSocketAddress> receiver) {}

    private AgentsMain() {}

    /** Runs until the process is told to end (SIGTERM, SIGINT). Exit code 2 for wrong options, 1 for no start. */
    public static void main(String[] args) throws InterruptedException {
        try {
            Options options = parse(args);
            run(DemoFleet.of(options.accessPoints(), options.seed(), options.port()), options.receiver());
        } catch (IllegalArgumentException wrong) {
            System.err.println(wrong.getMessage() + "; " + USAGE);
            System.exit(2);
        } catch (AgentsNotStarted clear) {
            System.err.println(clear.getMessage());
            System.exit(1);
        }
    }

    private static void run(DemoFleet fleet, Optional<InetSocketAddress> receiver) throws InterruptedException {
        Clock clock = Clock.systemUTC();
        Faults faults = new Faults(fleet, clock);
        AgentHost host = AgentHost.start(fleet, faults, clock);
        Optional<AgentNotices> notices = receiver.map(address -> AgentNotices.start(faults, clock, address));
        CountDownLatch told = new CountDownLatch(1);
        Runtime.getRuntime().addShutdownHook(new Thread(() -> {
            notices.ifPresent(AgentNotices::close);
            host.close();
            told.countDown();
        }));
        DemoDevice first = fleet.devices().get(0);
        DemoDevice last = fleet.devices().get(fleet.devices().size() - 1);
        System.out.println("ready: " + fleet.devices().size() + " invented agents (" + fleet.accessPoints()
                + " access points) answer on " + first.host() + " to " + last.host() + ", UDP port " + first.port());
        told.await();
    }

    /** Reads {@code --name value} and {@code --name=value}; the role that led here is passed over. */
    static Options parse(String... args) {
        Options options =
                new Options(DemoFleet.USUAL_SIZE, DemoFleet.USUAL_SEED, DemoFleet.USUAL_PORT, Optional.empty());
        for (int i = 0; i < args.length; i++) {
            String[] parts = args[i].split("=", 2);
            if (parts.length < 2 && i + 1 == args.length) {
                throw new IllegalArgumentException("option " + args[i] + " needs a value, or is not known");
            }
            String value = parts.length == 2 ? parts[1] : args[++i];
            if (!parts[0].equals("--role")) {
                options = with(options, parts[0], value);
            }
        }
        return options;
    }

    private static Options with(Options options, String name, String value) {
        int aps = options.accessPoints();
        long seed = options.seed();
        int port = options.port();
        return switch (name) {
            case "--access-points" -> new Options((int) number(name, value), seed, port, options.receiver());
            case "--seed" -> new Options(aps, number(name, value), port, options.receiver());
            case "--port" -> new Options(aps, seed, (int) number(name, value), options.receiver());
            case "--notify" -> new Options(aps, seed, port, Optional.of(AgentNotices.receiver(value)));
            default -> throw new IllegalArgumentException("option " + name + " is not known");
        };
    }

    private static long number(String name, String value) {
        try {
            long number = Long.parseLong(value);
            if (number != (int) number && !name.equals("--seed")) {
                throw new IllegalArgumentException("option " + name + " is out of range: " + value);
            }
            return number;
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException("option " + name + " needs a whole number, not \"" + value + "\"", e);
        }
    }
}
