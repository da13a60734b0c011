package org.roundsman.snmp.profile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.roundsman.measure.Subject;
import org.roundsman.snmp.profile.Table.Fold;
import org.roundsman.snmp.profile.Table.IndexPart;
import org.snmp4j.smi.OID;
import org.yaml.snakeyaml.nodes.Node;

/** Reads one member of {@code tables}. */
final class TableReader {

    private final Block block;
    private final Set<String> picks;
    private final Set<String> taken;

    /**
     * @param picks names of the picks that there are
     * @param taken keys of what is measured already, to which this table's are added
     */
    TableReader(Block block, Set<String> picks, Set<String> taken) {
        this.block = block;
        this.picks = picks;
        this.taken = taken;
    }

    Optional<Table> read() {
        block.allow("entry", "index", "pick", "fold", "discontinuity", "columns");
        block.need("entry", "the key entry is missing: the object identifier of the table's rows");
        block.need("columns", "the key columns is missing: what is read from each row");
        Optional<OID> entry = block.oid("entry");
        Optional<Block> columns = block.block("columns");
        if (entry.isEmpty() || columns.isEmpty()) {
            return Optional.empty();
        }
        List<Measure> measures = new MeasureReader(block.faults(), entry.get()).read(columns.get());
        for (Measure measure : measures) {
            if (!measure.fallback() && !taken.add(measure.target().key())) {
                columns.get()
                        .fault(
                                measure.target().key(),
                                "is measured twice in this profile; keep one, or make the lesser one fallback: true");
            }
        }
        Subject rows = rows(measures);
        List<IndexPart> index = index();
        String pick = block.text("pick").orElse(null);
        if (pick != null && !picks.contains(pick)) {
            block.fault("pick", "there is no pick " + pick + Faults.hint(pick, picks));
        }
        Fold fold = fold();
        // Where no column can be read, nothing is known of the rows: the columns' own faults say it all.
        if (!measures.isEmpty() || columns.get().entries().isEmpty()) {
            checkRows(rows, index, pick, fold);
        }
        return Optional.of(new Table(
                entry.get(), rows, index, pick, fold, block.oid("discontinuity").orElse(null), measures));
    }

    private Subject rows(List<Measure> measures) {
        List<Subject> subjects =
                measures.stream().map(m -> m.target().subject()).distinct().toList();
        if (subjects.size() > 1) {
            block.fault(
                    "columns", "one table is about the device, about radios or about networks, not several of them");
        }
        return subjects.isEmpty() ? Subject.DEVICE : subjects.get(0);
    }

    private void checkRows(Subject rows, List<IndexPart> index, String pick, Fold fold) {
        if (rows == Subject.DEVICE) {
            if ((pick == null) == (fold == null)) {
                block.fault("", "a table about the device needs either pick (one row) or fold (all rows)");
            }
            if (block.has("index")) {
                block.fault("index", "index is for tables about radios or networks");
            }
            return;
        }
        if (pick != null || fold != null) {
            block.fault(pick != null ? "pick" : "fold", "pick and fold are for tables about the device");
        }
        long radios = index.stream()
                .filter(p -> p == IndexPart.RADIO || p == IndexPart.INTERFACE)
                .count();
        if (rows == Subject.RADIO && radios != 1) {
            block.fault("index", "a table about radios needs index with one part that is radio or interface");
        }
        if (rows == Subject.NETWORK && index.isEmpty()) {
            block.fault("index", "a table about networks needs index, such as [radio, network]");
        }
    }

    private List<IndexPart> index() {
        List<IndexPart> parts = new ArrayList<>();
        List<String> known = Arrays.stream(IndexPart.values()).map(p -> p.word).toList();
        for (Node node : block.list("index")) {
            Block.text(block.faults(), block.name("index"), node).ifPresent(word -> {
                if (known.contains(word)) {
                    parts.add(IndexPart.values()[known.indexOf(word)]);
                } else {
                    block.faults()
                            .add(node, block.name("index"), "there is no part " + word + Faults.hint(word, known));
                }
            });
        }
        return parts;
    }

    private Fold fold() {
        List<String> known = Arrays.stream(Fold.values()).map(f -> f.word).toList();
        Optional<String> word = block.text("fold");
        if (word.isPresent() && !known.contains(word.get())) {
            block.fault("fold", "there is no fold " + word.get() + Faults.hint(word.get(), known));
            return null;
        }
        return word.map(w -> Fold.values()[known.indexOf(w)]).orElse(null);
    }

    static Optional<OID> column(Faults faults, String name, Node node, OID entry, String text) {
        if (text.matches("[0-9]{1,9}")) {
            return Optional.of(new OID(entry).append(Integer.parseInt(text)));
        }
        faults.add(node, name, "the number of a column below the entry is wanted, not " + text);
        return Optional.empty();
    }
}
