package org.roundsman.polling;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.Credentials;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.Devices;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.Agent;
import org.roundsman.snmp.DeviceMemory;
import org.roundsman.snmp.SnmpVisitor;
import org.roundsman.snmp.Visit;
import org.roundsman.snmp.VisitKind;
import org.roundsman.system.SealException;

/** Finds out which of the credentials usable at its site a device lets in. Changes nothing. */
@ApplicationScoped
@ActivateRequestContext
public class CredentialTrial {

    /** At 4 s for a device that keeps silent, more would outlast the patience of a browser. */
    static final int MOST_AT_ONCE = 12;

    private final Devices devices;
    private final Credentials credentials;
    private final FleetPollTargets targets;
    private final SnmpVisitor visitor;

    @Inject
    CredentialTrial(Devices devices, Credentials credentials, FleetPollTargets targets, SnmpVisitor visitor) {
        this.devices = devices;
        this.credentials = credentials;
        this.targets = targets;
        this.visitor = visitor;
    }

    /**
     * What one set of credentials brought.
     *
     * @param summary version and protocols
     * @param answer what the device made of it, in words that begin in lower case
     * @param letIn whether the device answered
     */
    public record Tried(long credentialId, String name, String owner, String summary, String answer, boolean letIn) {}

    /**
     * All that was tried, in order, up to the first that was let in.
     *
     * @param left how many were not tried, since an earlier one was let in, or enough were tried at once
     * @param next how many to skip to go on with those
     */
    public record Result(List<Tried> tried, int left, int next) {

        public Result {
            tried = List.copyOf(tried);
        }

        /** The one that the device lets in. */
        public Optional<Tried> letIn() {
            return tried.stream().filter(Tried::letIn).findFirst();
        }
    }

    /** Credentials that wait for their turn, with the agent as they reach it; without one where they do not open. */
    private record Candidate(Credential credential, Optional<Agent> agent, String fault) {}

    /**
     * Tries the others, one small Get each, the most specific first.
     *
     * @param skip how many to leave out from the beginning, which were tried before
     * @return ends normally for silence and refusal; fails when there is no such device
     */
    public CompletionStage<Result> others(long deviceId, int skip) {
        Device device = devices.find(CustomerScope.everyone(), deviceId)
                .orElseThrow(() -> new IllegalArgumentException("There is no device " + deviceId));
        List<Credential> others = credentials.usableAt(device.site.id).stream()
                .filter(other -> !other.id.equals(device.credential.id))
                .toList();
        List<Candidate> now = others.stream()
                .skip(skip)
                .limit(MOST_AT_ONCE)
                .map(other -> candidate(device, other))
                .toList();
        return next(now, new ArrayList<>()).thenApply(tried -> {
            int next = skip + tried.size();
            return new Result(tried, Math.max(0, others.size() - next), next);
        });
    }

    private Candidate candidate(Device device, Credential other) {
        try {
            return new Candidate(other, Optional.of(targets.agent(device, other)), "");
        } catch (SealException e) {
            return new Candidate(other, Optional.empty(), "not tried, its secret does not open: " + e.getMessage());
        }
    }

    private CompletableFuture<List<Tried>> next(List<Candidate> candidates, List<Tried> tried) {
        boolean over = tried.size() == candidates.size()
                || !tried.isEmpty() && tried.get(tried.size() - 1).letIn();
        if (over) {
            return CompletableFuture.completedFuture(tried);
        }
        Candidate candidate = candidates.get(tried.size());
        return candidate
                .agent()
                .map(agent -> visitor.visit(new DeviceMemory(agent), VisitKind.KNOCK)
                        .thenApply(visit -> tried(candidate.credential(), visit)))
                .orElseGet(() ->
                        CompletableFuture.completedFuture(tried(candidate.credential(), candidate.fault(), false)))
                .thenCompose(one -> {
                    tried.add(one);
                    return next(candidates, tried);
                });
    }

    private static Tried tried(Credential credential, Visit visit) {
        boolean letIn = visit.outcome().kind() == Outcome.Kind.ANSWERED;
        return tried(credential, visit.outcome().text(), letIn);
    }

    private static Tried tried(Credential credential, String answer, boolean letIn) {
        return new Tried(credential.id, credential.name, credential.owner(), credential.summary(), answer, letIn);
    }
}
