package org.roundsman.web.firmware;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.roundsman.firmware.FirmwareState;
import org.roundsman.web.fleet.Flag;

/**
 * How many devices of a model and customer run one version.
 *
 * @param since from the first to the last day on which it was first read; empty where no version was
 * @param statuses those of the devices, each once
 * @param behind the most days of any of them, or empty
 * @param link to the devices
 */
record RunLine(
        String customer,
        String model,
        String version,
        int count,
        String since,
        List<Flag> statuses,
        String flags,
        String behind,
        String link) {

    private record Group(long customer, long model, String version) {}

    /** By customer, model and count; the most first. */
    static List<RunLine> of(List<FirmwareState> states, FirmwareSearch search) {
        Map<Group, List<FirmwareState>> groups = new LinkedHashMap<>();
        for (FirmwareState state : states) {
            Group group = new Group(
                    state.place().customerId(), state.place().modelId().orElse(0), state.version());
            groups.computeIfAbsent(group, made -> new ArrayList<>()).add(state);
        }
        return groups.entrySet().stream()
                .map(group -> line(group.getKey(), group.getValue(), search))
                .sorted(Comparator.comparing((RunLine line) -> line.customer.toLowerCase(java.util.Locale.ROOT))
                        .thenComparing(line -> line.model)
                        .thenComparing(line -> -line.count)
                        .thenComparing(line -> line.version))
                .toList();
    }

    private static RunLine line(Group group, List<FirmwareState> states, FirmwareSearch search) {
        FirmwareState one = states.get(0);
        String link = "/firmware/devices"
                + search.query(Map.of(
                        "customer",
                        String.valueOf(group.customer),
                        "model",
                        String.valueOf(group.model),
                        "version",
                        FirmwareWords.or(group.version, FirmwareSearch.NO_VERSION)));
        return new RunLine(
                one.place().customer(),
                FirmwareWords.or(one.place().model(), "model not known"),
                FirmwareWords.or(group.version, "no version read"),
                states.size(),
                since(states),
                states.stream()
                        .map(FirmwareState::status)
                        .distinct()
                        .sorted()
                        .map(status -> Flag.of(status, ""))
                        .toList(),
                each(states.stream()
                        .flatMap(state -> FirmwareWords.flagsOf(state).stream())
                        .toList()),
                FirmwareWords.days(states.stream()
                        .flatMapToLong(state -> state.daysBehind().stream())
                        .max()),
                link);
    }

    private static String each(List<String> words) {
        return String.join(
                ", ", words.stream().filter(word -> !word.isEmpty()).distinct().toList());
    }

    private static String since(List<FirmwareState> states) {
        List<String> days = states.stream()
                .filter(state -> state.since().isPresent())
                .sorted(Comparator.comparing(state -> state.since().orElse(Instant.MIN)))
                .map(state -> FirmwareWords.day(state.since(), state.place().zone()))
                .filter(Objects::nonNull)
                .toList();
        if (days.isEmpty()) {
            return "";
        }
        String first = days.get(0);
        String last = days.get(days.size() - 1);
        return first.equals(last) ? first : first + " to " + last;
    }
}
