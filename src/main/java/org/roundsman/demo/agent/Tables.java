package org.roundsman.demo.agent;

import java.util.LinkedHashMap;
import java.util.Map;
import org.roundsman.demo.Cabling;
import org.roundsman.demo.SwitchManner;
import org.roundsman.fleet.DeviceKind;

/**
 * The rows that a switch or gateway has for itself: neighbours and learnt addresses. They are made when asked for and
 * kept for a few seconds and a few devices only, so that thousands of switches stay cheap. One thread at a time.
 */
final class Tables {

    private static final long FRESH_MILLIS = 5000;
    private static final int KEPT = 64;

    private record Made(long tick, int version, Shape shape) {}

    private final Map<AgentState, Made> kept = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<AgentState, Made> eldest) {
            return size() > KEPT;
        }
    };

    /** All that a device serves now: the shape that it shares with others, and its own rows. */
    Shape of(AgentState agent, Shape shared) {
        if (agent.device.isAccessPoint()) {
            return shared;
        }
        long tick = Math.floorDiv(agent.now(), FRESH_MILLIS);
        int version = agent.faultsOfAll().version();
        Made made = kept.get(agent);
        if (made == null || made.tick() != tick || made.version() != version) {
            made = new Made(tick, version, make(agent, shared));
            kept.put(agent, made);
        }
        return made.shape();
    }

    private static Shape make(AgentState agent, Shape shared) {
        Shape.Builder rows = new Shape.Builder();
        long restart = agent.now() - agent.upMillis();
        if (Cabling.sendsLldp(agent.device)) {
            LldpObjects.addNeighbours(
                    rows, agent.device, NeighboursNow.of(agent.device, agent.faultsOfAll(), agent.now(), restart));
        }
        if (agent.device.kind() == DeviceKind.NETWORK_SWITCH) {
            SwitchManner manner = Cabling.manner(agent.device);
            BridgeObjects.addForwarding(rows, ForwardingNow.of(agent.device, agent.faultsOfAll(), agent.now()), manner);
        }
        return shared.with(rows.build());
    }
}
