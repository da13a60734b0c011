package org.roundsman.fleet.transfer;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntConsumer;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.fleet.ImportOutcome;
import org.roundsman.fleet.ImportReason;
import org.roundsman.fleet.ImportRow;
import org.roundsman.fleet.ImportRun.Source;
import org.roundsman.shared.Page;

/** The rows of imports with their outcomes. Each method works in the transaction of the connection it is given. */
final class Rows {

    private static final int ROWS_AT_ONCE = 1000;
    private static final int MOST_REASONS = 10;
    private static final TypeReference<List<FieldChange>> CHANGES = new TypeReference<>() {};

    private final ObjectMapper json;

    Rows(ObjectMapper json) {
        this.json = json;
    }

    /** A row as it was kept: what was read, and how it came out. */
    record Kept(int number, Line line, ImportRow before) {}

    /**
     * Which rows to show.
     *
     * @param outcome null for every outcome
     * @param moved only those that came out differently than in the dry run before
     */
    record Choice(ImportOutcome outcome, boolean moved) {}

    void insert(Connection connection, long run, List<Line> lines, IntConsumer progress) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(
                "insert into import_row (run_id, number, file, line, name, cells, misread, outcome, changes, faults)"
                        + " values (?, ?, ?, ?, ?, ?::jsonb, ?::jsonb, ?, ?::jsonb, ?::jsonb)")) {
            for (int i = 0; i < lines.size(); i++) {
                Line line = lines.get(i);
                ImportRow result = line.result();
                statement.setLong(1, run);
                statement.setInt(2, i);
                statement.setInt(3, line.file());
                statement.setInt(4, line.row());
                statement.setString(5, result.name());
                statement.setString(6, text(pairs(line.cells())));
                statement.setString(7, text(pairs(line.misread())));
                statement.setString(8, result.outcome().name());
                statement.setString(9, text(result.changes()));
                statement.setString(10, text(pairs(result.faults())));
                statement.addBatch();
                if ((i + 1) % ROWS_AT_ONCE == 0 || i + 1 == lines.size()) {
                    statement.executeBatch();
                    progress.accept(i + 1);
                }
            }
        }
    }

    /** Notes new outcomes, and marks the rows that differ from what was kept; returns how many do. */
    int update(Connection connection, long run, List<Kept> kept) throws SQLException {
        int moved = 0;
        try (PreparedStatement clear =
                        connection.prepareStatement("update import_row set moved = false where run_id = ? and moved");
                PreparedStatement statement =
                        connection.prepareStatement("update import_row set outcome = ?, changes = ?::jsonb,"
                                + " faults = ?::jsonb, moved = true where run_id = ? and number = ?")) {
            clear.setLong(1, run);
            clear.executeUpdate();
            for (Kept row : kept) {
                ImportRow now = row.line().result();
                if (!now.equals(row.before())) {
                    moved++;
                    statement.setString(1, now.outcome().name());
                    statement.setString(2, text(now.changes()));
                    statement.setString(3, text(pairs(now.faults())));
                    statement.setLong(4, run);
                    statement.setInt(5, row.number());
                    statement.addBatch();
                }
            }
            statement.executeBatch();
        }
        return moved;
    }

    static boolean differ(List<Kept> kept) {
        return kept.stream().anyMatch(row -> !row.line().result().equals(row.before()));
    }

    /** Every row in its order, ready to be evaluated again. */
    List<Kept> load(Connection connection, long run) throws SQLException {
        List<Source> files = Runs.files(connection, run);
        List<Kept> kept = new ArrayList<>();
        try (PreparedStatement statement =
                connection.prepareStatement("select * from import_row where run_id = ? order by number")) {
            statement.setLong(1, run);
            statement.setFetchSize(ROWS_AT_ONCE);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    int file = row.getInt("file");
                    Source source = files.get(file);
                    Line line = new Line(
                            file, source.name(), row.getInt("line"), source.table(), texts(row.getString("cells")));
                    line.misread(texts(row.getString("misread")));
                    ImportRow before = row(row, files);
                    kept.add(new Kept(row.getInt("number"), line, unmoved(before)));
                }
            }
        }
        return kept;
    }

    private static ImportRow unmoved(ImportRow row) {
        return new ImportRow(
                row.file(),
                row.row(),
                row.table(),
                row.name(),
                row.within(),
                row.outcome(),
                row.changes(),
                row.faults(),
                row.given(),
                false);
    }

    Page<ImportRow> page(Connection connection, long run, Choice choice, int number, int size) throws SQLException {
        String where = " from import_row where run_id = ? and (?::text is null or outcome = ?) and (not ? or moved)";
        String outcome = choice.outcome() == null ? null : choice.outcome().name();
        List<Source> files = Runs.files(connection, run);
        List<ImportRow> rows = new ArrayList<>();
        long total;
        try (PreparedStatement count = connection.prepareStatement("select count(*)" + where);
                PreparedStatement statement =
                        connection.prepareStatement("select *" + where + " order by number limit ? offset ?")) {
            fill(count, run, outcome, choice.moved());
            try (ResultSet row = count.executeQuery()) {
                row.next();
                total = row.getLong(1);
            }
            fill(statement, run, outcome, choice.moved());
            statement.setInt(5, size);
            statement.setLong(6, (long) (number - 1) * size);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    rows.add(row(row, files));
                }
            }
        }
        return new Page<>(rows, number, size, total);
    }

    /** Why rows are refused, the most frequent first. */
    static List<ImportReason> reasons(Connection connection, long run) throws SQLException {
        List<ImportReason> reasons = new ArrayList<>();
        try (PreparedStatement statement =
                connection.prepareStatement("select fault ->> 0, fault ->> 1, count(*) from import_row,"
                        + " jsonb_array_elements(faults) fault where run_id = ? group by 1, 2 order by 3 desc, 1, 2 limit "
                        + MOST_REASONS)) {
            statement.setLong(1, run);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    reasons.add(new ImportReason(row.getString(1), row.getString(2), row.getInt(3)));
                }
            }
        }
        return reasons;
    }

    private static void fill(PreparedStatement statement, long run, String outcome, boolean moved) throws SQLException {
        statement.setLong(1, run);
        statement.setString(2, outcome);
        statement.setString(3, outcome);
        statement.setBoolean(4, moved);
    }

    private ImportRow row(ResultSet row, List<Source> files) throws SQLException {
        Source source = files.get(row.getInt("file"));
        Map<String, String> cells = texts(row.getString("cells"));
        Map<String, String> faults = texts(row.getString("faults"));
        return new ImportRow(
                source.name(),
                row.getInt("line"),
                source.table(),
                row.getString("name"),
                Line.within(source.table(), cells),
                ImportOutcome.valueOf(row.getString("outcome")),
                value(row.getString("changes"), CHANGES),
                faults,
                Line.given(cells, faults.keySet()),
                row.getBoolean("moved"));
    }

    /** As a list of pairs: jsonb would put the keys of an object into an order of its own. */
    private static List<String[]> pairs(Map<String, String> texts) {
        return texts.entrySet().stream()
                .map(e -> new String[] {e.getKey(), e.getValue()})
                .toList();
    }

    private Map<String, String> texts(String text) {
        Map<String, String> texts = new LinkedHashMap<>();
        value(text, new TypeReference<List<String[]>>() {}).forEach(pair -> texts.put(pair[0], pair[1]));
        return texts;
    }

    private String text(Object value) {
        try {
            return json.writeValueAsString(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("rows are plain texts", e);
        }
    }

    private <T> T value(String text, TypeReference<T> type) {
        try {
            return json.readValue(text, type);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a row of an import is not what we wrote", e);
        }
    }
}
