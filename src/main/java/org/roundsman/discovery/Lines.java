package org.roundsman.discovery;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.discovery.FoundDevice.Address;
import org.roundsman.discovery.recognise.Answer;
import org.roundsman.discovery.recognise.Group;
import org.roundsman.discovery.recognise.Known;
import org.roundsman.discovery.recognise.Names;
import org.roundsman.discovery.store.Finding;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Model;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Outcome;

/** Makes the lines of the list from findings and decisions. */
final class Lines {

    private final FleetPicture fleet;
    private final long siteId;
    private final List<Finding> findings;
    private final List<Known> known;
    private final List<Model> catalogue;
    private final Map<Long, String> credentials = new HashMap<>();

    Lines(FleetPicture fleet, long siteId, List<Finding> findings, List<Known> known) {
        this.fleet = fleet;
        this.siteId = siteId;
        this.findings = findings;
        this.known = known;
        this.catalogue = fleet.models();
    }

    /** In the order of their first addresses, those that refused among them. */
    List<FoundDevice> of(List<Group> groups, List<Decision> decisions) {
        Map<Long, Finding> byId = new HashMap<>();
        Map<Long, Integer> order = new HashMap<>();
        for (Finding finding : findings) {
            byId.put(finding.id(), finding);
            order.put(finding.id(), order.size());
        }
        Names names = new Names(known.stream()
                .filter(k -> k.siteId() == siteId)
                .map(Known::name)
                .toList());
        List<FoundDevice> lines = new ArrayList<>();
        for (int i = 0; i < groups.size(); i++) {
            lines.add(line(groups.get(i), decisions.get(i), byId, names));
        }
        findings.stream().filter(f -> f.outcome() != Outcome.ANSWERED).forEach(finding -> lines.add(refused(finding)));
        lines.sort(Comparator.comparingInt(line -> order.get(line.findingId())));
        return lines;
    }

    private FoundDevice line(Group group, Decision decided, Map<Long, Finding> byId, Names names) {
        Finding first = byId.get(group.first().findingId());
        Decision decision = decided;
        if (!group.why().isEmpty()) {
            List<String> evidence = new ArrayList<>(decided.evidence());
            evidence.add("one device with " + group.answers().size() + " addresses: " + group.why());
            decision = new Decision(
                    decided.standing(), decided.deviceId(), decided.reason(), evidence, decided.adoptable());
        }
        Optional<Model> model = fleet.model(catalogue, first.facts());
        return new FoundDevice(
                first.id(),
                group.answers().stream().map(Lines::address).toList(),
                first.outcome(),
                decision,
                credential(first),
                first.credentialId(),
                first.facts(),
                first.profiles(),
                model.map(m -> m.maker + " " + m.name).orElse(""),
                model.map(m -> m.id).orElse(null),
                entry(first, decision, model, names),
                first.remark(),
                first.at(),
                first.adoptedAt().filter(at -> first.adoptedAs() != null));
    }

    /** What a person entered, else a proposal; devices that are in the fleet keep name, kind and place. */
    private Review entry(Finding finding, Decision decision, Optional<Model> model, Names names) {
        Optional<Known> device = decision.changesDevice() || decision.standing() == Standing.KNOWN
                ? known.stream()
                        .filter(k -> k.deviceId() == decision.deviceId())
                        .findFirst()
                : Optional.empty();
        boolean ticked = decision.adoptable() && decision.standing() != Standing.DOUBTFUL;
        String place = Names.place(FleetPicture.said(finding.facts(), Fact.LOCATION));
        if (device.isPresent()) {
            boolean tick = finding.review().map(Review::ticked).orElse(ticked && decision.adoptable());
            String name = finding.review()
                    .filter(r -> decision.standing() == Standing.MOVED)
                    .map(Review::name)
                    .orElse(device.get().name());
            String there = finding.review()
                    .filter(r -> decision.standing() == Standing.MOVED)
                    .map(Review::place)
                    .orElse(place);
            return new Review(finding.id(), tick, name, null, there);
        }
        DeviceKind kind = fleet.kind(finding.profiles(), finding.facts(), model);
        String what = model.map(m -> m.name).orElse(FleetPicture.said(finding.facts(), Fact.MODEL));
        String name = names.propose(FleetPicture.said(finding.facts(), Fact.NAME), what, finding.host());
        // What nobody can tell the kind of is hardly what is looked for: a printer, a server.
        return finding.review().orElse(new Review(finding.id(), ticked && kind != null, name, kind, place));
    }

    private FoundDevice refused(Finding finding) {
        Optional<Known> there = known.stream()
                .filter(k -> k.siteId() == siteId && k.host().equals(finding.host()) && k.port() == finding.port())
                .findFirst();
        String reason = "Something speaks SNMP here, but our credentials are refused: "
                + finding.outcome().text() + "."
                + there.map(k -> " “" + k.name() + "” is entered at this address.")
                        .orElse("");
        Decision decision =
                new Decision(Standing.REFUSED, there.map(Known::deviceId).orElse(null), reason, List.of(), false);
        return new FoundDevice(
                finding.id(),
                List.of(new Address(finding.id(), finding.host(), finding.port())),
                finding.outcome(),
                decision,
                credential(finding),
                finding.credentialId(),
                finding.facts(),
                finding.profiles(),
                "",
                null,
                new Review(finding.id(), false, "", null, ""),
                finding.remark(),
                finding.at(),
                Optional.empty());
    }

    private String credential(Finding finding) {
        return finding.credentialId() == null
                ? ""
                : credentials.computeIfAbsent(finding.credentialId(), fleet::credential);
    }

    private static Address address(Answer answer) {
        return new Address(answer.findingId(), answer.host(), answer.port());
    }
}
