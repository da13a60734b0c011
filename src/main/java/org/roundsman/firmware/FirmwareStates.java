package org.roundsman.firmware;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.roundsman.firmware.judge.Judge;
import org.roundsman.firmware.judge.Releases;
import org.roundsman.firmware.store.PolicyTable;
import org.roundsman.firmware.store.RunningTable;
import org.roundsman.fleet.CustomerScope;

/**
 * How the firmware of devices stands against the policy. Worked out anew whenever it is asked, from one question for the
 * devices and a few for the policy, so that a change of either shows at once. Thread-safe.
 */
@ApplicationScoped
public class FirmwareStates {

    private final RunningTable running;
    private final PolicyTable policy;
    private final Clock clock;

    @Inject
    public FirmwareStates(DataSource database, Clock clock) {
        this.running = new RunningTable(database);
        this.policy = new PolicyTable(database);
        this.clock = clock;
    }

    /** Of these devices, by id; those that are not there or lie outside the scope are left out. */
    public Map<Long, FirmwareState> of(CustomerScope scope, Collection<Long> deviceIds) {
        if (deviceIds.isEmpty()) {
            return Map.of();
        }
        Set<Long> wanted = new HashSet<>(deviceIds);
        return judged(running.besides(scope.onlyCustomer(), deviceIds)).stream()
                .filter(state -> wanted.contains(state.deviceId()))
                .collect(Collectors.toMap(FirmwareState::deviceId, state -> state));
    }

    /** Of every device in the scope, by customer, site and name. */
    public List<FirmwareState> all(CustomerScope scope) {
        return judged(running.all(scope.onlyCustomer()));
    }

    /** The ids of the devices whose status is one of these. */
    public Set<Long> with(CustomerScope scope, Set<FirmwareStatus> statuses) {
        return all(scope).stream()
                .filter(state -> statuses.contains(state.status()))
                .map(FirmwareState::deviceId)
                .collect(Collectors.toSet());
    }

    private List<FirmwareState> judged(List<Running> devices) {
        List<LinePolicy> policies = policy.all();
        Judge judge = new Judge(policies, clock.instant());
        Releases releases = new Releases(policies);
        List<FirmwareState> states = devices.stream().map(judge::judge).toList();
        Map<String, Set<Object>> running = new HashMap<>();
        states.stream().filter(FirmwareStates::tells).forEach(state -> running.computeIfAbsent(
                        group(state), made -> new HashSet<>())
                .add(releases.of(state.place().lineId().getAsLong(), state.version())));
        return states.stream()
                .map(state ->
                        state.mixed(tells(state) && running.get(group(state)).size() > 1))
                .toList();
    }

    private static boolean tells(FirmwareState state) {
        return !state.version().isEmpty() && state.place().lineId().isPresent();
    }

    private static String group(FirmwareState state) {
        return state.place().siteId() + "/" + state.place().lineId().getAsLong();
    }
}
