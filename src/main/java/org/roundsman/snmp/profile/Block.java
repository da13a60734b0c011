package org.roundsman.snmp.profile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.snmp4j.smi.OID;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** One block of keys in a profile file. Every getter notes what is wrong and then gives nothing. */
final class Block {

    private static final Pattern OID_TEXT = Pattern.compile("[0-2](\\.[0-9]{1,10}){1,127}");
    private static final long LARGEST_SUB_ID = 4_294_967_295L;

    private final Faults faults;
    private final String path;
    private final Node node;
    private final Map<String, Node> entries = new LinkedHashMap<>();

    private Block(Faults faults, String path, Node node) {
        this.faults = faults;
        this.path = path;
        this.node = node;
    }

    /** Reads a block, or notes that there is none. */
    static Optional<Block> of(Faults faults, String path, Node node) {
        if (!(node instanceof MappingNode mapping)) {
            faults.add(node, path, "a block of keys is wanted here, such as key: value");
            return Optional.empty();
        }
        Block block = new Block(faults, path, node);
        for (NodeTuple tuple : mapping.getValue()) {
            String key = tuple.getKeyNode() instanceof ScalarNode scalar ? scalar.getValue() : "";
            if (key.isEmpty()) {
                faults.add(tuple.getKeyNode(), path, "a plain word is wanted as key");
            } else if (block.entries.put(key, tuple.getValueNode()) != null) {
                faults.add(tuple.getKeyNode(), block.name(key), "stands here twice; keep one");
            }
        }
        return Optional.of(block);
    }

    /** Notes every key that is not among the known ones. */
    Block allow(String... known) {
        entries.forEach((key, value) -> {
            if (!List.of(known).contains(key)) {
                faults.add(value, name(key), "there is no such key" + Faults.hint(key, Arrays.asList(known)));
            }
        });
        return this;
    }

    boolean has(String key) {
        return entries.containsKey(key);
    }

    Map<String, Node> entries() {
        return entries;
    }

    String name(String key) {
        return path.isEmpty() ? key : path + "." + key;
    }

    void fault(String key, String what) {
        faults.add(entries.getOrDefault(key, node), key.isEmpty() ? path : name(key), what);
    }

    void need(String key, String what) {
        if (!has(key)) {
            faults.add(node, path, what);
        }
    }

    Optional<String> text(String key) {
        return has(key) ? text(faults, name(key), entries.get(key)) : Optional.empty();
    }

    static Optional<String> text(Faults faults, String name, Node node) {
        if (node instanceof ScalarNode scalar && !scalar.getValue().isBlank()) {
            return Optional.of(scalar.getValue().strip());
        }
        faults.add(node, name, "one plain value is wanted here");
        return Optional.empty();
    }

    boolean flag(String key) {
        Optional<String> text = text(key);
        if (text.isPresent() && !text.get().equals("true") && !text.get().equals("false")) {
            fault(key, "true or false is wanted, not " + text.get());
        }
        return text.filter("true"::equals).isPresent();
    }

    double number(String key, double otherwise) {
        return text(key)
                .map(text -> number(faults, name(key), entries.get(key), text))
                .orElse(otherwise);
    }

    static double number(Faults faults, String name, Node node, String text) {
        try {
            double number = Double.parseDouble(text);
            if (Double.isFinite(number)) {
                return number;
            }
        } catch (NumberFormatException e) {
            faults.add(node, name, "a number is wanted, not " + text);
            return 1;
        }
        faults.add(node, name, "a finite number is wanted, not " + text);
        return 1;
    }

    Optional<OID> oid(String key) {
        return text(key).flatMap(text -> oid(faults, name(key), entries.get(key), text));
    }

    static Optional<OID> oid(Faults faults, String name, Node node, String text) {
        if (OID_TEXT.matcher(text).matches()
                && Arrays.stream(text.split("\\.")).allMatch(part -> Long.parseLong(part) <= LARGEST_SUB_ID)) {
            return Optional.of(new OID(text));
        }
        faults.add(
                node, name, "an object identifier in dotted numbers is wanted, such as 1.3.6.1.2.1.1.3.0, not " + text);
        return Optional.empty();
    }

    Optional<Block> block(String key) {
        return has(key) ? of(faults, name(key), entries.get(key)) : Optional.empty();
    }

    /** The members of a list; a single value counts as a list of one. */
    List<Node> list(String key) {
        if (!has(key)) {
            return List.of();
        }
        return entries.get(key) instanceof SequenceNode sequence ? sequence.getValue() : List.of(entries.get(key));
    }

    List<Block> blocks(String key) {
        List<Block> blocks = new ArrayList<>();
        List<Node> members = list(key);
        for (int i = 0; i < members.size(); i++) {
            of(faults, name(key) + "[" + (i + 1) + "]", members.get(i)).ifPresent(blocks::add);
        }
        return blocks;
    }

    Faults faults() {
        return faults;
    }
}
