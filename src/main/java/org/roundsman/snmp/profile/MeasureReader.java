package org.roundsman.snmp.profile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Metric;
import org.roundsman.snmp.profile.Measure.Scaling;
import org.snmp4j.smi.OID;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;

/** Reads the lines under {@code scalars} and {@code columns}. */
final class MeasureReader {

    private final Faults faults;
    /** The row object for columns, null for scalars. */
    private final OID entry;

    private final String object;

    MeasureReader(Faults faults, OID entry) {
        this.faults = faults;
        this.entry = entry;
        this.object = entry == null ? "oid" : "column";
    }

    List<Measure> read(Block block) {
        List<Measure> measures = new ArrayList<>();
        block.entries().forEach((key, node) -> target(block, key, node)
                .flatMap(target -> measure(target, block.name(key), node))
                .ifPresent(measures::add));
        return measures;
    }

    private Optional<Target> target(Block block, String key, Node node) {
        Optional<Target> target = Target.byKey(key);
        if (target.isEmpty()) {
            List<String> known = Target.all().stream().map(Target::key).toList();
            faults.add(node, block.name(key), "there is no such measurement" + Faults.hint(key, known));
        }
        return target;
    }

    private Optional<Measure> measure(Target target, String name, Node node) {
        if (!(node instanceof MappingNode)) {
            List<OID> parts = objects(name, List.of(node));
            return parts.isEmpty()
                    ? Optional.empty()
                    : Optional.of(new Measure(
                            target, parts, List.of(), usual(target), Scaling.NONE, target.isText(), false, line(node)));
        }
        return Block.of(faults, name, node).flatMap(block -> measure(target, block, line(node)));
    }

    private static int line(Node node) {
        return node.getStartMark().getLine() + 1;
    }

    private Optional<Measure> measure(Target target, Block block, int line) {
        block.allow(object, "share", "of", "as", "scale", "offset", "values", "pace", "fallback");
        boolean share = block.has("share");
        if (share == block.has(object)) {
            block.fault("", "either " + object + " or share with of is wanted");
            return Optional.empty();
        }
        if (share != block.has("of")) {
            block.fault("", "share and of belong together");
        }
        List<OID> parts = objects(block.name(share ? "share" : object), block.list(share ? "share" : object));
        List<OID> whole = objects(block.name("of"), block.list("of"));
        Form form = form(block, target);
        check(target, form, share, block);
        Measure measure = new Measure(
                target, parts, whole, form, scaling(block), slow(target, form, block), block.flag("fallback"), line);
        return parts.isEmpty() ? Optional.empty() : Optional.of(measure);
    }

    private static void check(Target target, Form form, boolean share, Block block) {
        if (target.isText() && !form.isText() && form != Form.PLAIN) {
            block.fault("as", form.word() + " gives a figure, but " + target.key() + " is a text");
        }
        if (!target.isText() && form.isText()) {
            block.fault("as", form.word() + " gives a text, but " + target.key() + " is a figure");
        }
        if ((form == Form.GROWTH) != share && (form == Form.GROWTH || form != Form.PLAIN)) {
            block.fault("as", form == Form.GROWTH ? "growth needs share and of" : "a share is plain or growth");
        }
        if (isClock(target) != (form == Form.DATE_AND_TIME)) {
            block.fault("as", "date-and-time and device.clock_offset belong together");
        }
        if (target.isText() && (block.has("scale") || block.has("offset") || block.has("values"))) {
            block.fault("", "scale, offset and values are for figures; " + target.key() + " is a text");
        }
        if (block.has("values") && (block.has("scale") || block.has("offset"))) {
            block.fault("values", "values stand alone, without scale and offset");
        }
    }

    private static Form form(Block block, Target target) {
        Optional<String> word = block.text("as");
        Optional<Form> form = word.flatMap(Form::byWord);
        if (word.isPresent() && form.isEmpty()) {
            block.fault(
                    "as",
                    "there is no form " + word.get()
                            + Faults.hint(
                                    word.get(),
                                    Arrays.stream(Form.values()).map(Form::word).toList()));
        }
        return form.orElse(usual(target));
    }

    /** The form that a target has when the profile does not say. */
    private static Form usual(Target target) {
        if (target == Target.Name.RADIO_MAC || target.equals(new Target.OfFact(Fact.BASE_MAC))) {
            return Form.MAC;
        }
        if (target.equals(new Target.OfFact(Fact.ENGINE_ID))) {
            return Form.HEX;
        }
        return isClock(target) ? Form.DATE_AND_TIME : Form.PLAIN;
    }

    private static boolean isClock(Target target) {
        return target instanceof Target.OfMetric of && of.metric() == Metric.CLOCK_OFFSET;
    }

    private static boolean slow(Target target, Form form, Block block) {
        Optional<String> pace = block.text("pace");
        if (pace.isPresent() && !List.of("slow", "fast").contains(pace.get())) {
            block.fault("pace", "slow or fast is wanted, not " + pace.get());
        }
        if (pace.filter("slow"::equals).isPresent() && form.isCounter()) {
            block.fault("pace", "a counter is read at every round; take the pace out");
        }
        if (pace.filter("fast"::equals).isPresent() && target.isText()) {
            block.fault("pace", "facts and names are always slow; take the pace out");
        }
        return target.isText() || pace.filter("slow"::equals).isPresent();
    }

    private Scaling scaling(Block block) {
        Map<Long, Double> values = new LinkedHashMap<>();
        block.block("values").ifPresent(listed -> listed.entries().forEach((raw, node) -> {
            double key = Block.number(faults, listed.name(raw), node, raw);
            Block.text(faults, listed.name(raw), node)
                    .ifPresent(text -> values.put((long) key, Block.number(faults, listed.name(raw), node, text)));
        }));
        return new Scaling(block.number("scale", 1), block.number("offset", 0), Map.copyOf(values));
    }

    private List<OID> objects(String name, List<Node> nodes) {
        return nodes.stream()
                .flatMap(node -> Block.text(faults, name, node).flatMap(text -> object(name, node, text)).stream())
                .toList();
    }

    private Optional<OID> object(String name, Node node, String text) {
        return entry == null
                ? Block.oid(faults, name, node, text)
                : TableReader.column(faults, name, node, entry, text);
    }
}
