package org.roundsman.dispatch.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.ReportState;
import org.roundsman.dispatch.ShelfSearch;
import org.roundsman.reports.ReportLook.PaperSize;
import org.roundsman.system.Rows;

/** Reads reports. Where {@code only} names a customer, only its own are seen, and of these only those that were sent. */
public final class ShelfTable {

    private static final String FROM = " from report r join customer c on c.id = r.customer_id";

    private static final String SELECT = "select r.*, c.name as customer,"
            + " m.waiting, m.sent, m.failed, m.bounced, not exists (select from report n where n.customer_id ="
            + " r.customer_id and n.from_on = r.from_on and n.to_on = r.to_on and n.revision > r.revision and"
            + " (?::bigint is null or n.state = 'SENT')) as newest from (select id, customer_id, from_on, to_on, revision,"
            + " state, language, paper, costs, remark, built_at, reviewed_by, reviewed_at, sent_at, failure, why,"
            + " figures_sha256, pdf_sha256, coalesce(length(pdf), 0) as pdf_size from report) r"
            + " join customer c on c.id = r.customer_id cross join lateral"
            + " (select count(*) filter (where state = 'WAITING') as waiting, count(*) filter (where state = 'SENT') as"
            + " sent, count(*) filter (where state = 'FAILED') as failed, count(*) filter (where state = 'BOUNCED') as"
            + " bounced from report_mail where report_id = r.id) m";

    private static final String SEEN = " where (?::bigint is null or r.customer_id = ?::bigint and r.state = 'SENT')";

    private static final String WANTED = SEEN + " and (?::bigint is null or r.customer_id = ?::bigint)"
            + " and (?::date is null or r.from_on >= ?::date and r.from_on < ?::date)"
            + " and (?::text is null or r.state = ?::text)";

    private final Rows rows;

    public ShelfTable(Rows rows) {
        this.rows = rows;
    }

    /**
     * What is stored of how a report looks.
     *
     * @param settled empty while it may change
     */
    public record Settled(
            Locale language,
            PaperSize paper,
            boolean costs,
            String remark,
            int revision,
            Optional<Instant> settled,
            OptionalLong firmBrand,
            OptionalLong customerBrand) {}

    /**
     * Figures of a report.
     *
     * @param asOf the moment for which they hold
     * @param observed SHA-256 over what later data can change
     */
    public record Figures(byte[] json, Instant asOf, String observed) {}

    public Optional<KeptReport> find(Long only, long id) {
        return rows.one(SELECT + SEEN + " and r.id = ?", ShelfTable::read, only, only, only, id);
    }

    /** All revisions of these days, the newest first. */
    public List<KeptReport> revisions(Long only, long customerId, LocalDate from, LocalDate to) {
        return rows.list(
                SELECT + SEEN + " and r.customer_id = ? and r.from_on = ? and r.to_on = ? order by r.revision desc",
                ShelfTable::read,
                only,
                only,
                only,
                customerId,
                from,
                to);
    }

    /** The newest revisions of these days, by customer's name. */
    public List<KeptReport> newest(LocalDate from, LocalDate to) {
        return rows
                .list(
                        SELECT + SEEN + " and r.from_on = ? and r.to_on = ? order by lower(c.name), r.customer_id",
                        ShelfTable::read,
                        null,
                        null,
                        null,
                        from,
                        to)
                .stream()
                .filter(KeptReport::last)
                .toList();
    }

    /** The newest days first, then by customer's name, the newest revision first. */
    public List<KeptReport> search(Long only, ShelfSearch search, int number, int size) {
        return rows.list(
                SELECT + WANTED
                        + " order by r.from_on desc, r.to_on desc, lower(c.name), r.customer_id, r.revision desc"
                        + " limit ? offset ?",
                ShelfTable::read,
                selected(only, search, size, (long) (number - 1) * size));
    }

    /** Those with an id above that one, by id. */
    public List<KeptReport> after(Long only, ShelfSearch search, long id, int most) {
        return rows.list(
                SELECT + WANTED + " and r.id > ? order by r.id limit ?",
                ShelfTable::read,
                selected(only, search, id, most));
    }

    /** How many the search finds in all. */
    public long count(Long only, ShelfSearch search) {
        return rows.number("select count(*)" + FROM + WANTED, wanted(only, search));
    }

    /** What SELECT, WANTED and the rest of a question ask for, in this order. */
    private static Object[] selected(Long only, ShelfSearch search, Object... rest) {
        List<Object> all = new ArrayList<>();
        all.add(only);
        all.addAll(Arrays.asList(wanted(only, search)));
        all.addAll(Arrays.asList(rest));
        return all.toArray();
    }

    private static Object[] wanted(Long only, ShelfSearch search) {
        LocalDate from = search.month().map(month -> month.atDay(1)).orElse(null);
        LocalDate to = search.month().map(month -> month.plusMonths(1).atDay(1)).orElse(null);
        String state = search.state().map(Enum::name).orElse(null);
        return new Object[] {only, only, search.customerId(), search.customerId(), from, from, to, state, state};
    }

    public Optional<Figures> figures(long id) {
        return rows.one(
                "select figures, as_of, observed from report where id = ? and figures is not null",
                row -> new Figures(
                        row.getBytes("figures"), Rows.instant(row, "as_of").orElseThrow(), row.getString("observed")),
                id);
    }

    /** The PDF that was settled, and its name. */
    public record Print(byte[] pdf, String fileName) {}

    public Optional<Print> print(long id) {
        return rows.one(
                "select pdf, file_name from report where id = ? and pdf is not null",
                row -> new Print(row.getBytes("pdf"), row.getString("file_name")),
                id);
    }

    public Optional<Settled> settled(long id) {
        return rows.one(
                "select language, paper, costs, remark, revision, settled_at, firm_brand, customer_brand from report"
                        + " where id = ?",
                row -> new Settled(
                        Locale.forLanguageTag(row.getString("language")),
                        PaperSize.valueOf(row.getString("paper")),
                        row.getBoolean("costs"),
                        row.getString("remark"),
                        row.getInt("revision"),
                        Rows.instant(row, "settled_at"),
                        Rows.id(row, "firm_brand"),
                        Rows.id(row, "customer_brand")),
                id);
    }

    private static KeptReport read(ResultSet row) throws SQLException {
        return new KeptReport(
                row.getLong("id"),
                row.getLong("customer_id"),
                row.getString("customer"),
                Rows.day(row, "from_on").orElseThrow(),
                Rows.day(row, "to_on").orElseThrow(),
                row.getInt("revision"),
                ReportState.valueOf(row.getString("state")),
                Locale.forLanguageTag(row.getString("language")),
                PaperSize.valueOf(row.getString("paper")),
                row.getBoolean("costs"),
                row.getString("remark"),
                Rows.instant(row, "built_at"),
                row.getString("reviewed_by"),
                Rows.instant(row, "reviewed_at"),
                Rows.instant(row, "sent_at"),
                row.getString("failure"),
                row.getString("why"),
                new KeptReport.Prints(
                        row.getString("figures_sha256"), row.getString("pdf_sha256"), row.getLong("pdf_size")),
                new KeptReport.Mails(
                        row.getInt("waiting"), row.getInt("sent"), row.getInt("failed"), row.getInt("bounced")),
                row.getBoolean("newest"));
    }
}
