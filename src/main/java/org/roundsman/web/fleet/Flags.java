package org.roundsman.web.fleet;

import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.roundsman.firmware.FirmwareState;
import org.roundsman.firmware.FirmwareStates;
import org.roundsman.firmware.FirmwareStatus;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Devices;
import org.roundsman.warranty.CoverStep;
import org.roundsman.warranty.UnitCover;
import org.roundsman.warranty.Warranties;
import org.roundsman.web.page.Visitor;

/** How firmware and warranty of devices stand, for lists and pages; templates know it as {@code inject:flags}. */
@Named("flags")
@RequestScoped
public class Flags {

    private final FirmwareStates firmware;
    private final Warranties warranties;
    private final Devices devices;
    private final Visitor visitor;

    Flags(FirmwareStates firmware, Warranties warranties, Devices devices, Visitor visitor) {
        this.firmware = firmware;
        this.warranties = warranties;
        this.devices = devices;
        this.visitor = visitor;
    }

    /**
     * Of one device, with what explains it.
     *
     * @param steps how the end of the warranty was worked out
     */
    public record Judged(FlagPair pair, String firmwareReason, List<String> steps) {}

    /** Of the device whose page is shown. */
    public Judged device(long deviceId) {
        CustomerScope scope = visitor.scope();
        Optional<FirmwareState> state =
                Optional.ofNullable(firmware.of(scope, List.of(deviceId)).get(deviceId));
        Optional<UnitCover> cover = warranties.ofDevice(scope, deviceId);
        return new Judged(
                new FlagPair(
                        state.map(s -> Flag.of(s.status(), s.version())).stream()
                                .toList(),
                        cover.map(c -> Flag.of(c.status(), c.lastDay())).stream()
                                .toList()),
                state.map(FirmwareState::reason).orElse(""),
                cover.map(c -> c.derivation().stream().map(CoverStep::text).toList())
                        .orElse(List.of()));
    }

    /** Of each of these devices. */
    public Map<Long, FlagPair> ofDevices(CustomerScope scope, Collection<Long> deviceIds) {
        Map<Long, FirmwareState> states = firmware.of(scope, deviceIds);
        Map<Long, UnitCover> covers = warranties.of(scope, deviceIds);
        Map<Long, FlagPair> pairs = new HashMap<>();
        for (Long id : deviceIds) {
            FirmwareState state = states.get(id);
            UnitCover cover = covers.get(id);
            pairs.put(
                    id,
                    new FlagPair(
                            state == null ? List.of() : List.of(Flag.of(state.status(), state.version())),
                            cover == null ? List.of() : List.of(Flag.of(cover.status(), cover.lastDay()))));
        }
        return pairs;
    }

    /** Of each of these sites: how many of its devices stand how, what asks for most first. */
    Map<Long, FlagPair> ofSites(CustomerScope scope, Collection<Long> siteIds) {
        List<Long> ids = devices.idsAt(scope, siteIds);
        Map<Long, Map<FirmwareStatus, Integer>> states = new HashMap<>();
        firmware.of(scope, ids).values().forEach(state -> states.computeIfAbsent(
                        state.place().siteId(), site -> new EnumMap<>(FirmwareStatus.class))
                .merge(state.status(), 1, Integer::sum));
        Map<Long, List<UnitCover>> covers = warranties.of(scope, ids).values().stream()
                .collect(Collectors.groupingBy(cover -> cover.siteId().orElseThrow()));
        Map<Long, FlagPair> pairs = new HashMap<>();
        for (Long site : siteIds) {
            pairs.put(
                    site,
                    new FlagPair(counted(states.get(site)), SiteCovers.flags(covers.getOrDefault(site, List.of()))));
        }
        return pairs;
    }

    private static List<Flag> counted(Map<FirmwareStatus, Integer> counts) {
        if (counts == null) {
            return List.of();
        }
        int all = counts.values().stream().mapToInt(Integer::intValue).sum();
        List<Flag> flags = new ArrayList<>();
        counts.forEach((status, count) -> {
            if (count == all || Flag.tone(status) != Flag.Tone.WELL) {
                flags.add(new Flag(Flag.tone(status), Flag.some(count, all) + status.word(), ""));
            }
        });
        flags.sort(Flag.WORST_FIRST);
        return flags;
    }

    /** The devices that the choice leaves; empty when nothing is chosen. */
    Optional<Set<Long>> only(CustomerScope scope, FlagChoice choice) {
        Optional<Set<Long>> running = choice.firmware().map(status -> firmware.with(scope, Set.of(status)));
        Optional<Set<Long>> covered = choice.cover().map(status -> warranties.with(scope, Set.of(status)));
        if (running.isPresent() && covered.isPresent()) {
            Set<Long> both = new HashSet<>(running.get());
            both.retainAll(covered.get());
            return Optional.of(both);
        }
        return running.isPresent() ? running : covered;
    }
}
