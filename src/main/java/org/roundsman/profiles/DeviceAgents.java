package org.roundsman.profiles;

import java.util.Optional;
import org.roundsman.snmp.Agent;

/** Where a device's agent is, and how it lets us in. Implemented where devices are polled. */
public interface DeviceAgents {

    /** Empty when there is no such device. */
    Optional<Agent> agent(long deviceId);
}
