package org.roundsman.polling;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import org.roundsman.snmp.DeviceMemory;
import org.roundsman.snmp.SnmpVisitor;
import org.roundsman.snmp.Visit;
import org.roundsman.snmp.VisitKind;
import org.roundsman.system.SealException;

/** Visits one device at a person's wish. */
@ApplicationScoped
public class PollNow {

    private final Rounds rounds;
    private final PollTargets targets;
    private final SnmpVisitor visitor;

    @Inject
    PollNow(Rounds rounds, PollTargets targets, SnmpVisitor visitor) {
        this.rounds = rounds;
        this.targets = targets;
        this.visitor = visitor;
    }

    /**
     * Visits the device and keeps every raw answer. The reading of a watched device is stored; a paused one's is only
     * shown. The stage ends normally for silence and refusal, and fails when there is no such device, and with a
     * {@link SealException} when the credentials do not open.
     */
    public CompletionStage<Visit> poll(long deviceId) {
        return rounds.visitNow(deviceId).orElseGet(() -> unwatched(deviceId));
    }

    private CompletableFuture<Visit> unwatched(long deviceId) {
        try {
            return targets.find(deviceId)
                    .map(target -> visitor.visit(new DeviceMemory(target.agent()), VisitKind.TRACED))
                    .orElseGet(() -> CompletableFuture.failedFuture(
                            new IllegalArgumentException("There is no device " + deviceId)));
        } catch (SealException e) {
            return CompletableFuture.failedFuture(e);
        }
    }
}
