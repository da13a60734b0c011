package org.roundsman.demo.agent;

import java.io.IOException;
import java.net.BindException;
import java.net.InetSocketAddress;
import java.net.StandardProtocolFamily;
import java.nio.channels.DatagramChannel;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.LongAdder;
import org.roundsman.demo.AgentsNotStarted;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.Faults;

/** The sockets and threads of a fleet's agents. */
public final class AgentSockets implements AutoCloseable {

    /** One thread serves some 30,000 requests a second; a second one helps only where processors are idle. */
    private static final int AGENTS_PER_THREAD = 8000;

    private final LongAdder answers = new LongAdder();
    private final List<AgentLoop> loops = new ArrayList<>();
    private final List<Thread> threads = new ArrayList<>();

    /**
     * Opens a socket for each device and starts answering.
     *
     * @throws AgentsNotStarted when a port is taken or the system grants too few open files; nothing is left open then
     */
    public static AgentSockets open(DemoFleet fleet, Faults faults, Clock clock) {
        OpenFiles.check(fleet.devices().size());
        AgentSockets sockets = new AgentSockets();
        try {
            sockets.openAll(fleet, faults, clock);
        } catch (IOException | RuntimeException e) {
            sockets.close();
            throw e instanceof AgentsNotStarted clear
                    ? clear
                    : new AgentsNotStarted("the agents did not start: " + e, e);
        }
        sockets.start();
        return sockets;
    }

    private void openAll(DemoFleet fleet, Faults faults, Clock clock) throws IOException {
        int count = 1 + fleet.devices().size() / AGENTS_PER_THREAD;
        for (int i = 0; i < count; i++) {
            loops.add(new AgentLoop(clock, answers));
        }
        ShapeBook shapes = new ShapeBook();
        for (DemoDevice device : fleet.devices()) {
            AgentState state = new AgentState(fleet, device, faults);
            Shape shape = shapes.of(fleet.siteOf(device), device);
            loops.get(device.number() % count).seat(bound(device), new AgentLoop.Seat(state, shape));
        }
    }

    private static DatagramChannel bound(DemoDevice device) throws IOException {
        InetSocketAddress address = new InetSocketAddress(device.host(), device.port());
        DatagramChannel channel = DatagramChannel.open(StandardProtocolFamily.INET);
        try {
            return channel.bind(address);
        } catch (BindException e) {
            channel.close();
            throw new AgentsNotStarted(
                    "UDP port " + device.port() + " on " + device.host() + " is taken (" + e.getMessage()
                            + "): stop what listens there, or choose another port with --port",
                    e);
        }
    }

    private void start() {
        for (AgentLoop loop : loops) {
            Thread thread = new Thread(loop, "invented-agents-" + threads.size());
            thread.setDaemon(true);
            thread.start();
            threads.add(thread);
        }
    }

    /** Replies sent since the start. */
    public long answers() {
        return answers.sum();
    }

    /** Stops answering and frees every port. */
    @Override
    public void close() {
        for (int i = 0; i < loops.size(); i++) {
            try {
                if (i < threads.size()) {
                    loops.get(i).stop(threads.get(i));
                } else {
                    loops.get(i).close();
                }
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        }
        loops.clear();
        threads.clear();
    }
}
