package org.roundsman.web.onboarding;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.roundsman.fleet.ImportOutcome;
import org.roundsman.fleet.ImportReason;
import org.roundsman.fleet.ImportRow;
import org.roundsman.fleet.ImportRun;
import org.roundsman.fleet.ImportRun.State;
import org.roundsman.shared.Page;
import org.roundsman.web.page.Words;

/**
 * An import as its page shows it.
 *
 * @param files one line for each, with what was recognised
 * @param percent of the rows that the work has done
 * @param tabs the outcomes with their counts; each shows only its rows
 * @param apply what the button says; empty where nothing can be applied
 * @param why nothing can be applied; empty where something can
 * @param reasons why rows are refused, where several are for the same
 * @param range which rows are shown
 * @param previous link to the page before, or empty
 * @param next link to the page after, or empty
 */
record RunView(
        long id,
        State state,
        String heading,
        String remark,
        List<String> files,
        int percent,
        String progress,
        List<Tab> tabs,
        String apply,
        String why,
        List<ReasonLine> reasons,
        List<RowView> rows,
        String range,
        String previous,
        String next) {

    /** A filter with its count. */
    record Tab(String title, String link, boolean here) {}

    /** Why rows are refused. */
    record ReasonLine(String rows, String column, String reason) {}

    static RunView of(ImportRun run, Page<ImportRow> page, Filter filter, List<ImportReason> reasons) {
        return new RunView(
                run.id(),
                run.state(),
                heading(run),
                run.remark(),
                run.files().stream().map(RunView::file).toList(),
                run.progress().total() == 0
                        ? 0
                        : (int) (100L * run.progress().done() / run.progress().total()),
                run.progress().work() + ": " + Words.count(run.progress().done()) + " of "
                        + Words.many(run.progress().total(), "row", "rows"),
                tabs(run, filter),
                apply(run),
                why(run),
                reasons.stream().allMatch(reason -> reason.rows() == 1)
                        ? List.of()
                        : reasons.stream().map(RunView::reason).toList(),
                page.items().stream().map(RowView::of).toList(),
                range(page),
                page.hasPrevious() ? filter.link(run.id(), Math.min(page.number(), page.last() + 1) - 1) : "",
                page.hasNext() ? filter.link(run.id(), page.number() + 1) : "");
    }

    private static ReasonLine reason(ImportReason reason) {
        return new ReasonLine(Words.many(reason.rows(), "row", "rows"), reason.column(), reason.reason());
    }

    private static String heading(ImportRun run) {
        return switch (run.state()) {
            case CHECKING -> "Dry run: checking the rows";
            case CHECKED -> "Dry run: nothing is written yet";
            case APPLYING -> "Writing the rows";
            case APPLIED -> "Imported";
            case FAILED -> "The dry run could not be made";
        };
    }

    /** What happened last, for lists. */
    static String state(ImportRun run) {
        return switch (run.state()) {
            case CHECKING -> "is being checked";
            case CHECKED ->
                run.count(ImportOutcome.REFUSED) > 0
                        ? "dry run, " + Words.many(run.count(ImportOutcome.REFUSED), "row", "rows") + " refused"
                        : "dry run, not applied";
            case APPLYING -> "is being written";
            case APPLIED -> "applied";
            case FAILED -> "failed";
        };
    }

    static String names(ImportRun run) {
        return run.files().stream().map(ImportRun.Source::name).collect(Collectors.joining(", "));
    }

    static String ago(ImportRun run, Instant now) {
        return Words.ago(run.startedAt(), now);
    }

    private static String file(ImportRun.Source file) {
        return file.name() + ": read as " + file.table().word() + ", " + Words.many(file.rows(), "row", "rows") + ", "
                + file.encoding() + ", separated by " + separator(file.delimiter());
    }

    private static String separator(String delimiter) {
        return delimiter.equals("tab") ? "tabs" : delimiter + "s";
    }

    private static List<Tab> tabs(ImportRun run, Filter filter) {
        List<Tab> tabs = new ArrayList<>();
        tabs.add(new Tab(Words.count(run.rows()) + " in all", Filter.ALL.link(run.id(), 1), filter.equals(Filter.ALL)));
        for (ImportOutcome outcome : ImportOutcome.values()) {
            Filter only = Filter.of(outcome);
            tabs.add(new Tab(
                    RowView.sign(outcome) + " " + Words.count(run.count(outcome)) + " " + outcome.word(),
                    only.link(run.id(), 1),
                    filter.equals(only)));
        }
        if (run.moved() > 0) {
            tabs.add(new Tab(
                    Words.count(run.moved()) + " came out differently",
                    Filter.MOVED.link(run.id(), 1),
                    filter.equals(Filter.MOVED)));
        }
        return tabs;
    }

    private static String apply(ImportRun run) {
        if (!run.applicable()) {
            return "";
        }
        int fresh = run.count(ImportOutcome.NEW);
        int changed = run.count(ImportOutcome.CHANGED);
        String what = fresh > 0 ? Words.count(fresh) + " new" : "";
        return "Write " + what + (fresh > 0 && changed > 0 ? " and " : "")
                + (changed > 0 ? Words.count(changed) + " changed" : "") + (fresh + changed == 1 ? " row" : " rows");
    }

    private static String why(ImportRun run) {
        int refused = run.count(ImportOutcome.REFUSED);
        if (refused > 0) {
            return Words.many(refused, "row is", "rows are")
                    + " refused, and it is all or nothing. Mend the file and send it again; or, where something was missing"
                    + " here (such as credentials), add it and check again.";
        }
        return run.applicable() ? "" : "There is nothing to write: all of it is here already.";
    }

    private static String range(Page<ImportRow> page) {
        if (page.items().isEmpty()) {
            return "";
        }
        long from = (long) (page.number() - 1) * page.size() + 1;
        return Words.count(from) + " to " + Words.count(from + page.items().size() - 1) + " of "
                + Words.many(page.total(), "row", "rows");
    }

    public boolean working() {
        return state == State.CHECKING || state == State.APPLYING;
    }

    public boolean checked() {
        return state == State.CHECKED;
    }

    public boolean applied() {
        return state == State.APPLIED;
    }

    public boolean failed() {
        return state == State.FAILED;
    }
}
