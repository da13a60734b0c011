package org.roundsman.dispatch.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.roundsman.dispatch.ReportLinks.Link;
import org.roundsman.dispatch.ReportLinks.Opened;
import org.roundsman.system.Rows;

/** Links that open reports. */
public final class LinkTable {

    private final Rows rows;

    public LinkTable(Rows rows) {
        this.rows = rows;
    }

    /** A new link; empty where the report was not sent. @param hash SHA-256 of its secret */
    public Optional<Link> add(long reportId, byte[] hash, String by, Instant now, Instant until) {
        return rows.one(
                "insert into report_link (report_id, hash, made_at, made_by, until_at) select id, ?, ?, ?, ? from report"
                        + " where id = ? and state = 'SENT' returning *",
                LinkTable::read,
                hash,
                now,
                by,
                until,
                reportId);
    }

    /** The newest first. */
    public List<Link> of(long reportId) {
        return rows.list("select * from report_link where report_id = ? order by id desc", LinkTable::read, reportId);
    }

    /** The report of a link that is not revoked yet, which then is; empty where there is none such. */
    public Optional<Long> revoke(long id, Instant now) {
        return rows.one(
                "update report_link set revoked_at = ? where id = ? and revoked_at is null returning report_id",
                row -> row.getLong(1),
                now,
                id);
    }

    /** What a good link opens, and counts that it did. */
    public Optional<Opened> open(byte[] hash, Instant now) {
        return rows.one(
                "update report_link l set opened = l.opened + 1, opened_at = ? from report r where l.hash = ?"
                        + " and l.revoked_at is null and l.until_at > ? and r.id = l.report_id and r.state = 'SENT'"
                        + " returning r.pdf, r.file_name",
                row -> new Opened(row.getBytes("pdf"), row.getString("file_name")),
                now,
                hash,
                now);
    }

    private static Link read(ResultSet row) throws SQLException {
        return new Link(
                row.getLong("id"),
                Rows.instant(row, "made_at").orElseThrow(),
                row.getString("made_by"),
                Rows.instant(row, "until_at").orElseThrow(),
                Rows.instant(row, "revoked_at"),
                row.getInt("opened"),
                Rows.instant(row, "opened_at"));
    }
}
