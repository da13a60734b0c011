package org.roundsman.firmware.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.roundsman.catalogue.FirmwareLine;
import org.roundsman.firmware.LinePolicy;
import org.roundsman.firmware.PolicyException;
import org.roundsman.firmware.Release;
import org.roundsman.firmware.SecurityMinimum;

/** Reads what is decided about lines of firmware: few rows, in a fixed number of statements. */
public final class PolicyTable {

    private final Sql sql;

    public PolicyTable(DataSource database) {
        this.sql = new Sql(database);
    }

    private record Of<T>(long lineId, T thing) {}

    /** Every line, by name. */
    public List<LinePolicy> all() {
        Map<Long, List<LinePolicy.ModelOf>> models = models();
        Map<Long, List<Release>> releases = byLine(releases(), Release::lineId);
        Map<Long, List<SecurityMinimum>> minimums = byLine(minimums(), SecurityMinimum::lineId);
        Map<Long, List<LinePolicy.PilotSite>> pilots = pilots();
        Map<Long, List<PolicyException>> exceptions = byLine(exceptions(), PolicyException::lineId);
        return sql.rows("select id, name, scheme, pattern from firmware_line order by lower(name)", row -> {
            long id = row.getLong("id");
            return new LinePolicy(
                    id,
                    row.getString("name"),
                    FirmwareLine.Scheme.valueOf(row.getString("scheme")),
                    row.getString("pattern"),
                    models.getOrDefault(id, List.of()),
                    releases.getOrDefault(id, List.of()),
                    minimums.getOrDefault(id, List.of()),
                    pilots.getOrDefault(id, List.of()),
                    exceptions.getOrDefault(id, List.of()));
        });
    }

    public Optional<LinePolicy> find(long lineId) {
        return all().stream().filter(line -> line.lineId() == lineId).findFirst();
    }

    private static <T> Map<Long, List<T>> byLine(List<T> things, Function<T, Long> line) {
        return things.stream().collect(Collectors.groupingBy(line));
    }

    private static <T> Map<Long, List<T>> grouped(List<Of<T>> things) {
        return things.stream()
                .collect(Collectors.groupingBy(Of::lineId, Collectors.mapping(Of::thing, Collectors.toList())));
    }

    private Map<Long, List<LinePolicy.ModelOf>> models() {
        return grouped(sql.rows(
                "select firmware_line_id, id, maker || ' ' || name as model from model where firmware_line_id is not null"
                        + " order by lower(maker), lower(name)",
                row -> new Of<>(row.getLong(1), new LinePolicy.ModelOf(row.getLong("id"), row.getString("model")))));
    }

    private List<Release> releases() {
        return sql.rows(
                "select r.*, m.maker || ' ' || m.name as model from firmware_release r left join model m"
                        + " on m.id = r.model_id order by r.id",
                PolicyTable::release);
    }

    private static Release release(ResultSet row) throws SQLException {
        return new Release(
                row.getLong("id"),
                row.getLong("line_id"),
                Sql.number(row, "model_id"),
                Sql.text(row, "model"),
                row.getString("version"),
                Release.Stand.valueOf(row.getString("stand")),
                row.getString("reason"),
                Sql.day(row, "withdrawn_on"),
                Sql.day(row, "released_on"));
    }

    private List<SecurityMinimum> minimums() {
        return sql.rows(
                "select n.*, m.maker || ' ' || m.name as model from firmware_minimum n left join model m"
                        + " on m.id = n.model_id order by n.id",
                row -> new SecurityMinimum(
                        row.getLong("id"),
                        row.getLong("line_id"),
                        Sql.number(row, "model_id"),
                        Sql.text(row, "model"),
                        row.getString("version"),
                        row.getString("identifier"),
                        row.getString("note")));
    }

    private Map<Long, List<LinePolicy.PilotSite>> pilots() {
        return grouped(sql.rows(
                "select p.line_id, s.id, s.name as site, c.id as customer_id, c.name as customer from firmware_pilot_site p"
                        + " join site s on s.id = p.site_id join customer c on c.id = s.customer_id"
                        + " order by lower(c.name), lower(s.name)",
                row -> new Of<>(
                        row.getLong("line_id"),
                        new LinePolicy.PilotSite(
                                row.getLong("id"),
                                row.getString("site"),
                                row.getLong("customer_id"),
                                row.getString("customer")))));
    }

    private List<PolicyException> exceptions() {
        return sql.rows(
                "select e.*, c.name as customer from firmware_exception e join customer c on c.id = e.customer_id"
                        + " order by e.last_day desc, e.id",
                row -> new PolicyException(
                        row.getLong("id"),
                        row.getLong("line_id"),
                        row.getLong("customer_id"),
                        row.getString("customer"),
                        row.getString("version"),
                        row.getString("reason"),
                        Sql.day(row, "last_day").orElseThrow(),
                        row.getString("made_by"),
                        Sql.moment(row, "made_at").orElseThrow()));
    }
}
