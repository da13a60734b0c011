package org.roundsman.snmp.plan;

import java.lang.System.Logger.Level;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.ReadTable;
import org.roundsman.snmp.TableQuestion;
import org.roundsman.snmp.TableReading;

/**
 * Reads tables of one agent, one after the other, each with as many rows at once as the agent was found to bear. Runs on
 * its agent's thread.
 */
public final class TableVisit {

    private static final System.Logger LOG = System.getLogger(TableVisit.class.getName());

    private final VisitRun.Setting setting;
    private final DeviceRecord record;
    private final List<TableQuestion> questions;
    private final int maxRows;
    private final CompletableFuture<TableReading> future;
    private final List<ReadTable> tables = new ArrayList<>();
    private Errand errand;
    private Instant at;

    private TableVisit(
            VisitRun.Setting setting,
            DeviceRecord record,
            List<TableQuestion> questions,
            int maxRows,
            CompletableFuture<TableReading> future) {
        this.setting = setting;
        this.record = record;
        this.questions = questions;
        this.maxRows = maxRows;
        this.future = future;
    }

    /**
     * Reads; the future completes with what was read.
     *
     * @param maxRows rows of one table after which reading it stops with a remark
     */
    public static void start(
            VisitRun.Setting setting,
            DeviceRecord record,
            List<TableQuestion> questions,
            int maxRows,
            CompletableFuture<TableReading> future) {
        TableVisit visit = new TableVisit(setting, record, questions, maxRows, future);
        visit.errand = new Errand(setting.session(), record.peer(), null, visit::fault);
        setting.session().meet(record.peer(), refusal -> {
            try {
                visit.begin(refusal);
            } catch (RuntimeException e) {
                visit.fault(e);
            }
        });
    }

    private void begin(Outcome refusal) {
        at = setting.clock().instant().truncatedTo(ChronoUnit.MILLIS);
        if (refusal != null) {
            errand.refused(refusal);
            complete();
            return;
        }
        next();
    }

    private void next() {
        if (tables.size() == questions.size()) {
            complete();
            return;
        }
        TableRows rows = new TableRows(questions.get(tables.size()));
        TableWalk.Tour tour = new TableWalk.Tour(errand, record.limits, rows, maxRows);
        int remarks = errand.remarks().size();
        TableWalk.start(tour, rows.entry(), rows.columns(), complete -> heard(rows, complete, remarks));
    }

    /** A walk that had to be remarked on (cut short, refused, going backwards) did not show the whole table. */
    private void heard(TableRows rows, boolean complete, int remarksBefore) {
        boolean whole = complete && errand.remarks().size() == remarksBefore;
        tables.add(new ReadTable(questions.get(tables.size()), rows.rows(), whole));
        if (complete) {
            next();
        } else {
            complete();
        }
    }

    /** A fault of ours ends the reading and is logged; it never leaves a caller waiting. */
    private void fault(RuntimeException e) {
        LOG.log(
                Level.ERROR,
                "A fault of ours while reading tables of "
                        + record.peer().agent().host(),
                e);
        errand.remark("a fault of ours ended the reading: " + e);
        if (errand.outcome() == null) {
            errand.refused(Outcome.UNREADABLE_REPLY);
        }
        complete();
    }

    private void complete() {
        while (tables.size() < questions.size()) {
            tables.add(new ReadTable(questions.get(tables.size()), List.of(), false));
        }
        Instant begun = at == null ? setting.clock().instant() : at;
        future.complete(new TableReading(
                begun, errand.outcome(), tables, errand.requests(), errand.timeouts(), errand.remarks()));
    }
}
