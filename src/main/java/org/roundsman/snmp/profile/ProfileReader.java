package org.roundsman.snmp.profile;

import java.io.Reader;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.roundsman.snmp.ProfileException;
import org.snmp4j.smi.OID;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.Node;

/** Reads one profile file and finds everything that is wrong with it. */
public final class ProfileReader {

    private static final List<String> KINDS = List.of("access point", "switch", "gateway");

    /** Picks of the host profile, which applies to every device: other profiles may use and replace them. */
    private static final List<String> HOST_PICKS = List.of("chassis", "ram", "uplink");

    private final Faults faults;

    private ProfileReader(String file) {
        this.faults = new Faults(file);
    }

    /**
     * Reads a file.
     *
     * @param file its name, for messages
     * @throws ProfileException with one line for each fault, naming file, line and key
     */
    public static Profile read(String file, Reader text) {
        ProfileReader reader = new ProfileReader(file);
        Profile profile = reader.read(text);
        if (!reader.faults.isEmpty()) {
            throw new ProfileException(reader.faults.all());
        }
        return profile;
    }

    private Profile read(Reader text) {
        try {
            Node root = new Yaml(new LoaderOptions()).compose(text);
            if (root == null) {
                faults.add((org.yaml.snakeyaml.error.Mark) null, "", "the file is empty");
                return null;
            }
            return Block.of(faults, "", root).map(this::profile).orElse(null);
        } catch (MarkedYAMLException e) {
            faults.add(e.getProblemMark(), "", "this is no valid YAML: " + e.getProblem());
        } catch (YAMLException e) {
            faults.add((org.yaml.snakeyaml.error.Mark) null, "", "this is no valid YAML: " + e.getMessage());
        }
        return null;
    }

    private Profile profile(Block block) {
        block.allow("profile", "about", "select", "scalars", "picks", "tables", "notifications");
        block.need("profile", "the key profile is missing: the profile's name");
        String name = block.text("profile").orElse("");
        if (!name.isEmpty() && !name.matches("[a-z0-9][a-z0-9-]*")) {
            block.fault("profile", "a name of small letters, digits and hyphens is wanted, not " + name);
        }
        Map<String, Pick> picks = picks(block);
        List<Measure> scalars = block.block("scalars")
                .map(b -> new MeasureReader(faults, null).read(b))
                .orElse(List.of());
        for (Measure scalar : scalars) {
            if (scalar.target().subject() != org.roundsman.measure.Subject.DEVICE) {
                block.fault("scalars", scalar.target().key() + " is measured per row: it belongs under tables");
            }
        }
        List<Table> tables = new ArrayList<>();
        Set<String> taken = new HashSet<>();
        scalars.stream()
                .filter(m -> !m.fallback())
                .forEach(m -> taken.add(m.target().key()));
        Set<String> pickNames = new TreeSet<>(HOST_PICKS);
        pickNames.addAll(picks.keySet());
        for (Block table : block.blocks("tables")) {
            new TableReader(table, pickNames, taken).read().ifPresent(tables::add);
        }
        return new Profile(
                name,
                block.text("about").orElse(""),
                selectors(block),
                picks,
                scalars,
                tables,
                NotificationReader.read(block));
    }

    private List<Profile.Selector> selectors(Block block) {
        List<Profile.Selector> selectors = new ArrayList<>();
        for (Block each : block.blocks("select")) {
            each.allow("object-id", "answers", "kind");
            OID objectId = each.oid("object-id").orElse(null);
            OID answers = each.oid("answers").orElse(null);
            String kind = each.text("kind").orElse(null);
            if (!each.has("object-id") && !each.has("answers")) {
                each.fault("", "object-id or answers is wanted; leave select out for a profile of all devices");
            }
            if (kind != null && !KINDS.contains(kind)) {
                each.fault("kind", "there is no kind " + kind + Faults.hint(kind, KINDS));
            }
            selectors.add(new Profile.Selector(objectId, answers, kind));
        }
        return selectors;
    }

    private Map<String, Pick> picks(Block block) {
        Map<String, Pick> picks = new LinkedHashMap<>();
        block.block("picks")
                .ifPresent(all -> all.entries().forEach((name, node) -> Block.of(faults, all.name(name), node)
                        .map(this::pick)
                        .ifPresent(pick -> picks.put(name, pick))));
        return picks;
    }

    private Pick pick(Block block) {
        block.allow("index-in", "entry", "where", "highest");
        if (block.has("index-in")) {
            if (block.has("entry") || block.has("where") || block.has("highest")) {
                block.fault("index-in", "index-in stands alone");
            }
            return block.oid("index-in").map(Pick.IndexIn::new).orElse(null);
        }
        block.need("entry", "either index-in, or entry with where is wanted");
        OID entry = block.oid("entry").orElse(new OID("0.0"));
        Map<OID, String> where = new LinkedHashMap<>();
        block.block("where").ifPresent(columns -> columns.entries()
                .forEach((column, node) -> TableReader.column(faults, columns.name(column), node, entry, column)
                        .ifPresent(oid -> Block.text(faults, columns.name(column), node)
                                .ifPresent(value -> where.put(oid, value)))));
        OID highest = block.text("highest")
                .flatMap(column -> TableReader.column(
                        faults, block.name("highest"), block.entries().get("highest"), entry, column))
                .orElse(null);
        if (where.isEmpty() && highest == null) {
            block.fault("", "where or highest is wanted");
        }
        return new Pick.Where(entry, where, highest);
    }
}
