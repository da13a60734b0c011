package org.roundsman.snmp.plan;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Facts.RadioFacts;
import org.roundsman.snmp.decode.Texts;
import org.roundsman.snmp.plan.PollPlan.NetworkPlan;
import org.roundsman.snmp.plan.PollPlan.RadioPlan;
import org.roundsman.snmp.profile.Form;
import org.roundsman.snmp.profile.Measure;
import org.roundsman.snmp.profile.Profile;
import org.roundsman.snmp.profile.Table;
import org.roundsman.snmp.profile.Target;
import org.snmp4j.smi.OID;

/**
 * Makes a poll plan from what a survey found: for each metric of each subject, the first source that gave a value, in
 * the order of the profiles, fallbacks last within theirs.
 */
final class PlanMaking {

    private final Survey.Result found;
    private final SlotBook book;
    private final List<Slot> always;

    private final Choices<Figure> device = new Choices<>();
    private final Map<Fact, String> facts = new EnumMap<>(Fact.class);
    private final SortedMap<Integer, Radio> radios = new TreeMap<>();
    private final Map<OID, Network> networks = new LinkedHashMap<>();

    private static final class Radio {
        String label = "";
        String mac = "";
        final Choices<Figure> figures = new Choices<>();
    }

    private static final class Network {
        String ssid = "";
        final Choices<Figure> figures = new Choices<>();
    }

    /** @param always slots asked at each round whatever the profiles say */
    PlanMaking(Survey.Result found, SlotBook book, List<Slot> always) {
        this.found = found;
        this.book = book;
        this.always = always;
    }

    PollPlan make() {
        for (Profile profile : found.profiles()) {
            add(profile, false);
            add(profile, true);
        }
        SortedMap<Integer, RadioPlan> radioPlans = new TreeMap<>();
        radios.forEach((number, radio) -> radioPlans.put(
                number, new RadioPlan(new RadioFacts(number, radio.label, radio.mac), radio.figures.chosen())));
        List<NetworkPlan> networkPlans = networks.values().stream()
                .filter(network -> !network.ssid.isEmpty())
                .map(network -> new NetworkPlan(network.ssid, network.figures.chosen()))
                .toList();
        List<String> names = found.profiles().stream().map(Profile::name).toList();
        return new PollPlan(names, fast(radioPlans, networkPlans), device.chosen(), radioPlans, networkPlans, facts);
    }

    private List<Slot> fast(Map<Integer, RadioPlan> radioPlans, List<NetworkPlan> networkPlans) {
        Set<Slot> slots = new LinkedHashSet<>();
        always.stream().filter(slot -> slot.value != null).forEach(slots::add);
        Stream.of(
                        device.chosen().stream(),
                        radioPlans.values().stream().flatMap(r -> r.figures().stream()),
                        networkPlans.stream().flatMap(n -> n.figures().stream()))
                .flatMap(figures -> figures)
                .filter(figure -> !figure.measure().slow())
                .forEach(figure -> {
                    slots.addAll(figure.parts());
                    slots.addAll(figure.whole());
                    if (figure.isCounter() && figure.discontinuity() != null) {
                        slots.add(figure.discontinuity());
                    }
                });
        return List.copyOf(slots);
    }

    private void add(Profile profile, boolean fallback) {
        for (Measure measure : profile.scalars()) {
            if (measure.fallback() == fallback) {
                ofDevice(measure, slots(measure.parts(), null), slots(measure.whole(), null), null, null);
            }
        }
        Numbering numbering = Numbering.of(profile, book);
        for (Table table : profile.tables()) {
            for (Measure measure : table.measures()) {
                if (measure.fallback() == fallback) {
                    rows(table, measure, numbering);
                }
            }
        }
    }

    private void rows(Table table, Measure measure, Numbering numbering) {
        if (table.pick() != null) {
            OID index = found.picked().get(table.pick());
            if (index != null) {
                ofDevice(
                        measure,
                        slots(measure.parts(), index),
                        slots(measure.whole(), index),
                        discontinuity(table, index),
                        null);
            }
            return;
        }
        List<OID> indexes = book.rows(measure.parts().get(0));
        if (table.fold() != null) {
            List<Slot> all = indexes.stream()
                    .map(index -> book.find(new OID(measure.parts().get(0)).append(index)))
                    .toList();
            ofDevice(measure, all, List.of(), null, table.fold());
            return;
        }
        indexes.forEach(index -> ofRow(table, measure, numbering, index));
    }

    private void ofRow(Table table, Measure measure, Numbering numbering, OID index) {
        List<Slot> parts = slots(measure.parts(), index);
        List<Slot> whole = slots(measure.whole(), index);
        if (measure.target() instanceof Target.OfMetric of) {
            Choices<Figure> figures = figuresOf(table, numbering, index);
            if (figures != null && answered(parts) && answered(whole)) {
                Figure figure = new Figure(of.metric(), measure, parts, whole, discontinuity(table, index), null);
                figures.offer(of.metric(), figure, makesSense(figure));
            }
            return;
        }
        name((Target.Name) measure.target(), table, numbering, index, text(measure, parts));
    }

    private Choices<Figure> figuresOf(Table table, Numbering numbering, OID index) {
        if (table.rows() == org.roundsman.measure.Subject.NETWORK) {
            return networks.computeIfAbsent(index, i -> new Network()).figures;
        }
        Radio radio = radio(table, numbering, index);
        return radio == null ? null : radio.figures;
    }

    private Radio radio(Table table, Numbering numbering, OID index) {
        int number = numbering.radio(table, index);
        return number < 1 ? null : radios.computeIfAbsent(number, n -> new Radio());
    }

    private void name(Target.Name target, Table table, Numbering numbering, OID index, String text) {
        if (target == Target.Name.SSID) {
            Network network = networks.computeIfAbsent(index, i -> new Network());
            network.ssid = network.ssid.isEmpty() ? text : network.ssid;
            return;
        }
        Radio radio = radio(table, numbering, index);
        if (radio != null && target == Target.Name.RADIO_LABEL && radio.label.isEmpty()) {
            radio.label = text;
        } else if (radio != null && target == Target.Name.RADIO_MAC && radio.mac.isEmpty()) {
            radio.mac = text;
        }
    }

    private void ofDevice(Measure measure, List<Slot> parts, List<Slot> whole, Slot discontinuity, Table.Fold fold) {
        if (parts.isEmpty() || !answered(parts) || !answered(whole)) {
            return;
        }
        if (measure.target() instanceof Target.OfMetric of) {
            Figure figure = new Figure(of.metric(), measure, parts, whole, discontinuity, fold);
            device.offer(of.metric(), figure, makesSense(figure));
        } else if (measure.target() instanceof Target.OfFact of) {
            String text = text(measure, parts);
            if (!text.isEmpty()) {
                facts.putIfAbsent(of.fact(), text);
            }
        }
    }

    /** Whether a level can be read now: a source that gives no sense yields to one that does. */
    private static boolean makesSense(Figure figure) {
        return figure.isCounter()
                || figure.metric().admits(figure.value(0))
                || figure.measure().form() == Form.DATE_AND_TIME;
    }

    static String text(Measure measure, List<Slot> parts) {
        Slot slot = parts.get(0);
        if (slot.value == null) {
            return "";
        }
        return switch (measure.form()) {
            case MAC -> Texts.mac(slot.value);
            case HEX -> Texts.hex(slot.value);
            default -> Texts.of(slot.value).strip();
        };
    }

    private Slot discontinuity(Table table, OID index) {
        return table.discontinuity() == null ? null : valued(book.find(new OID(table.discontinuity()).append(index)));
    }

    private static Slot valued(Slot slot) {
        return slot == null || slot.value == null ? null : slot;
    }

    private static boolean answered(List<Slot> slots) {
        return slots.stream().allMatch(slot -> slot.value != null);
    }

    private List<Slot> slots(List<OID> objects, OID index) {
        return objects.stream()
                .map(object -> book.at(index == null ? object : new OID(object).append(index)))
                .toList();
    }
}
