package org.roundsman.snmp.plan;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.snmp4j.PDU;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.VariableBinding;

/** Reads some columns of a table to their end by GetBulk, or by GetNext in SNMPv1. */
final class TableWalk {

    private static final int MOST_COLUMNS = 12;

    /** What is common to the walks of one visit. */
    record Tour(Errand errand, Limits limits, SlotBook book, int maxRows) {}

    private static final class Column {
        final OID base;
        OID last;
        boolean ended;

        Column(OID base) {
            this.base = base;
            this.last = base;
        }
    }

    private final Tour tour;
    private final OID entry;
    private final List<Column> columns;
    private final Consumer<Boolean> done;
    private final Set<OID> rows = new HashSet<>();
    private boolean cut;

    private TableWalk(Tour tour, OID entry, List<OID> columns, Consumer<Boolean> done) {
        this.tour = tour;
        this.entry = entry;
        this.columns = columns.stream().map(Column::new).toList();
        this.done = done;
    }

    /**
     * Walks; the book then holds every value.
     *
     * @param done hears whether the table was read to its end
     */
    static void start(Tour tour, OID entry, List<OID> columns, Consumer<Boolean> done) {
        if (columns.size() <= MOST_COLUMNS) {
            new TableWalk(tour, entry, columns, done).next();
            return;
        }
        List<OID> first = columns.subList(0, MOST_COLUMNS);
        List<OID> rest = columns.subList(MOST_COLUMNS, columns.size());
        new TableWalk(
                        tour,
                        entry,
                        first,
                        complete -> start(tour, entry, rest, alsoComplete -> done.accept(complete && alsoComplete)))
                .next();
    }

    private void next() {
        List<Column> open = columns.stream()
                .filter(c -> !c.ended)
                .limit(tour.limits.mostVariables())
                .toList();
        if (open.isEmpty() || cut) {
            tour.limits.sawTable(entry, rows.size());
            done.accept(true);
            return;
        }
        int repetitions = tour.limits.repetitions(entry, open.size(), rows.size());
        List<OID> after = open.stream().map(c -> c.last).toList();
        tour.errand.ask(tour.errand.next(after, repetitions), pdu -> take(open, pdu), () -> done.accept(false));
    }

    private void take(List<Column> open, PDU pdu) {
        switch (pdu.getErrorStatus()) {
            case PDU.noError -> rows(open, pdu);
            case PDU.tooBig -> tooBig(open);
            case PDU.noSuchName -> end(open, pdu.getErrorIndex() - 1);
            default -> {
                tour.errand.remark("the device refused to walk " + name() + ": " + pdu.getErrorStatusText());
                open.forEach(c -> c.ended = true);
            }
        }
        next();
    }

    private void tooBig(List<Column> open) {
        int asked = open.size() * tour.limits.repetitions(entry, open.size(), rows.size());
        tour.limits.tooBig(asked);
        if (asked == 1) {
            tour.errand.remark("a value of " + name() + " is too big for the device's replies");
            open.forEach(c -> c.ended = true);
        }
    }

    /** An SNMPv1 agent says noSuchName at the end of its objects. */
    private static void end(List<Column> open, int place) {
        if (place >= 0 && place < open.size()) {
            open.get(place).ended = true;
        } else {
            open.forEach(c -> c.ended = true);
        }
    }

    private void rows(List<Column> open, PDU pdu) {
        List<? extends VariableBinding> bindings = pdu.getVariableBindings();
        tour.limits.sawReply(pdu.getBERLength(), bindings.size());
        if (bindings.isEmpty()) {
            tour.errand.remark("the device's reply carries nothing of " + name());
            open.forEach(c -> c.ended = true);
        }
        for (int i = 0; i < bindings.size(); i++) {
            Column column = open.get(i % open.size());
            if (!column.ended) {
                value(column, bindings.get(i));
            }
        }
    }

    private void value(Column column, VariableBinding binding) {
        OID oid = binding.getOid();
        if (binding.isException() || !oid.startsWith(column.base) || oid.size() == column.base.size()) {
            column.ended = true;
        } else if (oid.compareTo(column.last) <= 0) {
            tour.errand.remark("the device does not advance in " + name() + ": at " + oid.toDottedString()
                    + " it goes back; the rest of the table was not read");
            column.ended = true;
        } else {
            column.last = oid;
            row(column, binding);
        }
    }

    private void row(Column column, VariableBinding binding) {
        OID suffix = new OID(
                binding.getOid().getValue(),
                column.base.size(),
                binding.getOid().size() - column.base.size());
        if (rows.size() >= tour.maxRows && !rows.contains(suffix)) {
            if (!cut) {
                tour.errand.remark(
                        "the table " + name() + " has more than " + tour.maxRows + " rows; the rest was not read");
            }
            cut = true;
            return;
        }
        rows.add(suffix);
        tour.book.put(binding.getOid(), Fetch.valueOf(binding));
    }

    private String name() {
        return entry.toDottedString();
    }
}
