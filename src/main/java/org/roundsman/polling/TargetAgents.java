package org.roundsman.polling;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Optional;
import org.roundsman.profiles.DeviceAgents;
import org.roundsman.snmp.Agent;

/** The agents of devices as the rounds know them. */
@ApplicationScoped
class TargetAgents implements DeviceAgents {

    private final PollTargets targets;

    @Inject
    TargetAgents(PollTargets targets) {
        this.targets = targets;
    }

    @Override
    public Optional<Agent> agent(long deviceId) {
        return targets.find(deviceId).map(PollTarget::agent);
    }
}
