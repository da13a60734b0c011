package org.roundsman.firmware.work;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.roundsman.firmware.FirmwareState;
import org.roundsman.firmware.FirmwareStatus;
import org.roundsman.firmware.WorkItem;
import org.roundsman.firmware.WorkItem.Risk;

/**
 * Makes work out of states: one item for each site and line that has something to change, the riskiest first. Within the same
 * risk the one that is most days behind comes first, then the one that serves most people.
 */
public final class WorkList {

    private static final Comparator<WorkItem> ORDER = Comparator.comparing(WorkItem::risk)
            .thenComparing(item -> -item.daysBehind().orElse(0))
            .thenComparing(item -> -item.people().orElse(0))
            .thenComparing(item -> item.place().customer().toLowerCase(java.util.Locale.ROOT))
            .thenComparing(item -> item.place().site().toLowerCase(java.util.Locale.ROOT))
            .thenComparing(item -> item.place().siteId());

    private WorkList() {}

    /**
     * The items, not yet fitted into windows.
     *
     * @param people clients in the busiest quarter hour, by site
     */
    public static List<WorkItem> of(List<FirmwareState> states, Map<Long, Integer> people) {
        Map<String, List<FirmwareState>> groups = new LinkedHashMap<>();
        for (FirmwareState state : states) {
            if (state.place().lineId().isPresent()) {
                String key =
                        state.place().siteId() + "/" + state.place().lineId().getAsLong();
                groups.computeIfAbsent(key, made -> new ArrayList<>()).add(state);
            }
        }
        return groups.values().stream()
                .flatMap(group -> item(group, people).stream())
                .sorted(ORDER)
                .toList();
    }

    private static Optional<WorkItem> item(List<FirmwareState> group, Map<Long, Integer> people) {
        List<FirmwareState> pending = group.stream()
                .filter(state -> risk(state).isPresent())
                .sorted(Comparator.comparing(state -> risk(state).orElseThrow()))
                .toList();
        if (pending.isEmpty()) {
            return Optional.empty();
        }
        FirmwareState worst = pending.get(0);
        Risk risk = risk(worst).orElseThrow();
        boolean mixed = group.stream().anyMatch(FirmwareState::mixed);
        OptionalLong behind = pending.stream()
                .flatMapToLong(state -> state.daysBehind().stream())
                .max();
        Integer clients = people.get(worst.place().siteId());
        return Optional.of(new WorkItem(
                worst.place(),
                risk == Risk.BEHIND && mixed ? Risk.MIXED : risk,
                worst.reason(),
                targets(pending),
                pending,
                group.size(),
                behind,
                clients == null ? OptionalInt.empty() : OptionalInt.of(clients),
                List.of(),
                pending.size()));
    }

    /** Models of one line may be meant to run different releases. */
    private static List<WorkItem.Target> targets(List<FirmwareState> pending) {
        List<WorkItem.Target> each = pending.stream()
                .map(state -> new WorkItem.Target(state.place().model(), state.target()))
                .distinct()
                .sorted(Comparator.comparing(WorkItem.Target::model, String.CASE_INSENSITIVE_ORDER)
                        .thenComparing(WorkItem.Target::version))
                .toList();
        List<String> versions =
                each.stream().map(WorkItem.Target::version).distinct().toList();
        return versions.size() == 1 ? List.of(new WorkItem.Target("", versions.get(0))) : each;
    }

    /** An accepted release is left alone, unless others of the site run something else. */
    private static Optional<Risk> risk(FirmwareState state) {
        return switch (state.status()) {
            case WITHDRAWN -> Optional.of(state.security() ? Risk.SECURITY : Risk.WITHDRAWN);
            case BEHIND -> Optional.of(Risk.BEHIND);
            case CURRENT ->
                state.mixed() && !state.target().isEmpty() && !state.onTarget()
                        ? Optional.of(Risk.MIXED)
                        : Optional.empty();
            case AHEAD_OF_POLICY, EXCEPTED, NOT_KNOWN -> Optional.empty();
        };
    }

    /** Whether that status asks for work by itself. */
    public static boolean asksForWork(FirmwareStatus status) {
        return status == FirmwareStatus.WITHDRAWN || status == FirmwareStatus.BEHIND;
    }
}
