package org.roundsman.firmware;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;
import org.roundsman.catalogue.ModelMoved;
import org.roundsman.firmware.judge.Judge;
import org.roundsman.firmware.store.PolicyTable;
import org.roundsman.firmware.store.RunningTable;

/**
 * What it does to withdrawals when a model moves to another line: what is decided about a line holds for its models only. Asks
 * about the devices of all customers. Thread-safe.
 */
@ApplicationScoped
public class LineMoves {

    private final RunningTable running;
    private final PolicyTable policy;
    private final AuditTrail audit;
    private final Clock clock;

    @Inject
    LineMoves(DataSource database, AuditTrail audit, Clock clock) {
        this.running = new RunningTable(database);
        this.policy = new PolicyTable(database);
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Withdrawals that a move ends.
     *
     * @param from name of the line whose they are
     * @param to name of the other line; empty for none
     * @param devices how many count as withdrawn before the move and not after it; at least one
     * @param reasons why they do, each once
     */
    public record Lifted(String from, String to, int devices, List<String> reasons) {

        public Lifted {
            reasons = List.copyOf(reasons);
        }
    }

    /**
     * What a move of that model would lift; empty where it lifts nothing, or where there is no such line.
     *
     * @param to empty for no line at all
     */
    public Optional<Lifted> lifted(long modelId, OptionalLong from, OptionalLong to) {
        if (from.isEmpty() || from.equals(to)) {
            return Optional.empty();
        }
        Map<Long, LinePolicy> lines = policy.all().stream().collect(Collectors.toMap(LinePolicy::lineId, line -> line));
        if (!lines.containsKey(from.getAsLong()) || to.isPresent() && !lines.containsKey(to.getAsLong())) {
            return Optional.empty();
        }
        String name = to.isPresent() ? lines.get(to.getAsLong()).line() : "";
        String before = lines.get(from.getAsLong()).line();
        Judge judge = new Judge(lines.values(), clock.instant());
        List<FirmwareState> ended = running.ofModel(modelId).stream()
                .filter(device -> !withdrawn(judge.judge(on(device, to, name))))
                .map(device -> judge.judge(on(device, from, before)))
                .filter(LineMoves::withdrawn)
                .toList();
        List<String> reasons =
                ended.stream().map(FirmwareState::reason).distinct().sorted().toList();
        return ended.isEmpty() ? Optional.empty() : Optional.of(new Lifted(before, name, ended.size(), reasons));
    }

    private static boolean withdrawn(FirmwareState state) {
        return state.status() == FirmwareStatus.WITHDRAWN;
    }

    /** The same device, were its model of that line. */
    private static Running on(Running device, OptionalLong line, String name) {
        FirmwarePlace place = device.place();
        return new Running(
                device.deviceId(),
                device.device(),
                device.kind(),
                device.version(),
                device.since(),
                device.otherKind(),
                new FirmwarePlace(
                        place.customerId(),
                        place.customer(),
                        place.siteId(),
                        place.site(),
                        place.zone(),
                        place.modelId(),
                        place.model(),
                        line,
                        name));
    }

    /** In the transaction of the move, beside what is noted of the model itself. */
    void moved(@Observes ModelMoved move) {
        lifted(move.modelId(), OptionalLong.of(move.fromLine()), move.toLine()).ifPresent(lifted -> {
            FieldSet before = new FieldSet()
                    .with("firmware line", lifted.from())
                    .with("reason", String.join("; ", lifted.reasons()));
            FieldSet after = new FieldSet()
                    .with("firmware line", lifted.to())
                    .with("devices no longer withdrawn", lifted.devices());
            Subject subject = new Subject("withdrawal of firmware", move.modelId(), move.model(), null);
            audit.note(List.of(new AuditTrail.Note("lifted", subject, FieldSet.between(before, after))));
        });
    }
}
