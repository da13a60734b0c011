package org.roundsman.snmp.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.roundsman.measure.Subject;
import org.roundsman.snmp.profile.Measure;
import org.roundsman.snmp.profile.Pick;
import org.roundsman.snmp.profile.Profile;
import org.roundsman.snmp.profile.Table;
import org.roundsman.snmp.session.Request;
import org.snmp4j.PDU;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.VariableBinding;

/**
 * Asks a device for everything that its profiles may want: which profiles apply, all scalars, all tables. What it
 * answers makes the poll plan for the rounds to come.
 */
final class Survey {

    private final TableWalk.Tour tour;
    private final List<Profile> candidates;
    private final OID objectId;
    private final Consumer<Result> done;

    private final Set<OID> answering = new HashSet<>();
    private final Map<String, OID> picked = new HashMap<>();
    private List<Profile> profiles = List.of();
    private boolean complete = true;

    /**
     * What a survey found.
     *
     * @param profiles those that apply, the most specific first
     * @param picked index of the row that each pick chose
     * @param complete whether every question was answered
     */
    record Result(List<Profile> profiles, Map<String, OID> picked, boolean complete) {}

    private Survey(TableWalk.Tour tour, List<Profile> candidates, OID objectId, Consumer<Result> done) {
        this.tour = tour;
        this.candidates = candidates;
        this.objectId = objectId;
        this.done = done;
    }

    /** Starts asking; the book holds the answers when it is done. */
    static void start(TableWalk.Tour tour, List<Profile> candidates, OID objectId, Consumer<Result> done) {
        new Survey(tour, candidates, objectId, done).askWhatAnswers();
    }

    private void askWhatAnswers() {
        List<OID> wanted = candidates.stream()
                .flatMap(p -> p.selectors().stream())
                .filter(s -> s.answers() != null
                        && (s.objectId() == null || objectId != null && objectId.startsWith(s.objectId())))
                .map(Profile.Selector::answers)
                .distinct()
                .toList();
        askWhatAnswers(wanted, this::select);
    }

    /** One GetNext for all; one each where an SNMPv1 agent refuses the lot because one name has no successor. */
    private void askWhatAnswers(List<OID> wanted, Runnable then) {
        if (wanted.isEmpty()) {
            then.run();
            return;
        }
        // The successor of a name's predecessor is the name itself, so that an instance counts as well as a subtree.
        List<OID> before = wanted.stream().map(OID::predecessor).toList();
        tour.errand()
                .ask(
                        Request.getNext(before),
                        pdu -> {
                            if (pdu.getErrorStatus() == PDU.noSuchName && wanted.size() > 1) {
                                askWhatAnswers(
                                        wanted.subList(0, 1),
                                        () -> askWhatAnswers(wanted.subList(1, wanted.size()), then));
                                return;
                            }
                            note(wanted, pdu);
                            then.run();
                        },
                        this::giveUp);
    }

    private void note(List<OID> wanted, PDU pdu) {
        for (int i = 0; pdu.getErrorStatus() == PDU.noError && i < Math.min(wanted.size(), pdu.size()); i++) {
            VariableBinding binding = pdu.get(i);
            if (!binding.isException() && binding.getOid().startsWith(wanted.get(i))) {
                answering.add(wanted.get(i));
            }
        }
    }

    private void giveUp() {
        complete = false;
        select();
    }

    private void select() {
        profiles = candidates.stream()
                .filter(p -> p.fit(objectId, answering) >= 0)
                .sorted(java.util.Comparator.<Profile>comparingInt(p -> -p.fit(objectId, answering))
                        .thenComparing(Profile::name))
                .toList();
        askScalars();
    }

    private void askScalars() {
        Set<Slot> slots = new LinkedHashSet<>();
        for (Profile profile : profiles) {
            profile.scalars().forEach(m -> m.objects()
                    .forEach(oid -> slots.add(tour.book().at(oid))));
        }
        for (Pick pick : picks().values()) {
            if (pick instanceof Pick.IndexIn in) {
                slots.add(tour.book().at(in.instance()));
            }
        }
        fetch(slots, this::walkTables);
    }

    private void fetch(Set<Slot> slots, Runnable then) {
        Set<Slot> unknown = new LinkedHashSet<>(slots);
        unknown.removeIf(slot -> slot.fresh || slot.gone);
        Fetch.start(tour.errand(), tour.limits(), Fetch.portions(List.copyOf(unknown), tour.limits()), answered -> {
            complete &= answered;
            then.run();
        });
    }

    /** The picks that count: the most specific profile's by name. */
    private Map<String, Pick> picks() {
        Map<String, Pick> picks = new LinkedHashMap<>();
        profiles.forEach(p -> p.picks().forEach(picks::putIfAbsent));
        return picks;
    }

    private void walkTables() {
        Map<OID, Set<OID>> columns = new LinkedHashMap<>();
        for (Pick pick : picks().values()) {
            if (pick instanceof Pick.Where where) {
                Set<OID> wanted = columns.computeIfAbsent(where.entry(), e -> new LinkedHashSet<>());
                wanted.addAll(where.where().keySet());
                if (where.highest() != null) {
                    wanted.add(where.highest());
                }
            }
        }
        for (Profile profile : profiles) {
            for (Table table : profile.tables()) {
                if (table.rows() != Subject.DEVICE || table.fold() != null) {
                    Set<OID> wanted = columns.computeIfAbsent(table.entry(), e -> new LinkedHashSet<>());
                    table.measures().forEach(m -> wanted.addAll(columns(m, table)));
                }
            }
        }
        walk(columns.entrySet().iterator());
    }

    private void walk(Iterator<Map.Entry<OID, Set<OID>>> tables) {
        if (!tables.hasNext()) {
            pickRows();
            return;
        }
        Map.Entry<OID, Set<OID>> table = tables.next();
        TableWalk.start(tour, table.getKey(), List.copyOf(table.getValue()), read -> {
            complete &= read;
            walk(tables);
        });
    }

    private void pickRows() {
        RowChoice choice = new RowChoice(tour.book());
        picks().forEach((name, pick) -> choice.index(pick).ifPresent(index -> picked.put(name, index)));
        Set<Slot> slots = new LinkedHashSet<>();
        for (Profile profile : profiles) {
            for (Table table : profile.tables()) {
                OID index = table.pick() == null ? null : picked.get(table.pick());
                if (index != null) {
                    table.measures().forEach(m -> columns(m, table)
                            .forEach(column -> slots.add(tour.book().at(new OID(column).append(index)))));
                }
            }
        }
        fetch(slots, () -> done.accept(new Result(profiles, picked, complete)));
    }

    private static List<OID> columns(Measure measure, Table table) {
        List<OID> columns = new ArrayList<>(measure.objects());
        if (measure.form().isCounter() && table.discontinuity() != null) {
            columns.add(table.discontinuity());
        }
        return columns;
    }
}
