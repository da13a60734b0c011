package org.roundsman.web.discovery;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.roundsman.discovery.FoundDevice;
import org.roundsman.discovery.Review;
import org.roundsman.discovery.Standing;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Fact;
import org.roundsman.web.page.Faults;

/**
 * One line of the list.
 *
 * @param mark name of its shape
 * @param entersName whether name and place can be entered
 * @param entersKind whether the kind can be chosen
 */
record LineView(
        long id,
        String mark,
        String word,
        String addresses,
        String name,
        String place,
        List<Option> kinds,
        boolean ticked,
        boolean open,
        boolean entersName,
        boolean entersKind,
        String what,
        String credential,
        String reason,
        List<String> evidence,
        Long deviceId,
        Map<String, String> faults) {

    /** Something to choose. */
    record Option(String value, String text, boolean chosen) {}

    static LineView of(FoundDevice line, Review entry, Faults faults) {
        Standing standing = line.decision().standing();
        boolean open = line.isOpen();
        boolean fresh = standing == Standing.NEW || standing == Standing.DOUBTFUL;
        List<String> evidence = new ArrayList<>(line.decision().evidence());
        if (!line.remark().isEmpty()) {
            evidence.add(line.remark());
        }
        return new LineView(
                line.findingId(),
                mark(standing),
                line.adoptedAt().isPresent() ? "adopted" : standing.word(),
                line.at().stream().map(FoundDevice.Address::text).collect(Collectors.joining(", ")),
                entry.name(),
                entry.place(),
                kinds(entry.kind()),
                entry.ticked(),
                open,
                open && (fresh || standing == Standing.MOVED),
                open && fresh,
                what(line),
                line.credential(),
                standing == Standing.NEW ? "" : line.decision().reason(),
                evidence,
                standing == Standing.NEW ? null : line.decision().deviceId(),
                faults(line.findingId(), faults));
    }

    private static String mark(Standing standing) {
        return switch (standing) {
            case NEW -> "answering";
            case KNOWN, NEW_ADDRESS, MOVED -> "unwatched";
            case DOUBTFUL -> "silent";
            case REFUSED -> "refusing";
        };
    }

    private static List<Option> kinds(DeviceKind chosen) {
        return Arrays.stream(DeviceKind.values())
                .map(kind -> new Option(kind.name(), kind.word(), kind == chosen))
                .toList();
    }

    private static String what(FoundDevice line) {
        Map<Fact, String> said = line.facts().values();
        String maker = said.getOrDefault(Fact.MAKER, "") + " " + said.getOrDefault(Fact.MODEL, "");
        String model = line.model().isEmpty() ? maker.strip() : line.model();
        List<String> parts = new ArrayList<>();
        parts.add(model.isEmpty() ? said.getOrDefault(Fact.DESCRIPTION, "model not known") : model);
        if (said.containsKey(Fact.FIRMWARE)) {
            parts.add("firmware " + said.get(Fact.FIRMWARE));
        }
        if (said.containsKey(Fact.SERIAL)) {
            parts.add("serial " + said.get(Fact.SERIAL));
        }
        return line.decision().standing() == Standing.REFUSED ? "" : String.join(", ", parts);
    }

    private static Map<String, String> faults(long id, Faults faults) {
        return Map.of(
                "name", faults.at("name-" + id),
                "kind", faults.at("kind-" + id),
                "place", faults.at("place-" + id),
                "line", (faults.at("line-" + id) + " " + faults.at("host-" + id)).strip());
    }

    /** A line in doubt is ticked one by one only. */
    public boolean doubtful() {
        return mark.equals("silent");
    }

    public String fault(String field) {
        return faults.getOrDefault(field, "");
    }
}
