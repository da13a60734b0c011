package org.roundsman.warranty.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.system.Rows;
import org.roundsman.warranty.Evidence;
import org.roundsman.warranty.EvidenceKind;

/** The files of purchases. */
public final class EvidenceTable {

    private static final String ABOUT = "select id, purchase_id, name, kind, octets, encode(sha256, 'hex') as digest,"
            + " added_by, added_at from evidence";

    private final Rows rows;

    public EvidenceTable(DataSource database) {
        this.rows = new Rows(database, "warranty");
    }

    public List<Evidence> of(long purchaseId) {
        return rows.list(ABOUT + " where purchase_id = ? order by id", EvidenceTable::about, purchaseId);
    }

    public Optional<Evidence> find(long id) {
        return rows.one(ABOUT + " where id = ?", EvidenceTable::about, id);
    }

    private static Evidence about(ResultSet row) throws SQLException {
        return new Evidence(
                row.getLong("id"),
                row.getLong("purchase_id"),
                row.getString("name"),
                EvidenceKind.valueOf(row.getString("kind")),
                row.getInt("octets"),
                row.getString("digest"),
                row.getString("added_by"),
                Rows.instant(row, "added_at").orElseThrow());
    }

    public byte[] content(long id) {
        return rows.one("select content from evidence where id = ?", row -> row.getBytes(1), id)
                .orElseThrow();
    }

    /** Octets that the files of one customer take together; nobody else adds to them until this transaction ends. */
    public long octetsOf(long customerId) {
        Columns.holdCustomer(rows, customerId);
        return rows.one(
                        "select coalesce(sum(e.octets), 0) from evidence e join purchase p on p.id = e.purchase_id where"
                                + " p.customer_id = ?",
                        row -> row.getLong(1),
                        customerId)
                .orElse(0L);
    }

    public Evidence add(Evidence wanted, byte[] content) {
        long id = rows.one(
                        "insert into evidence (purchase_id, name, kind, octets, sha256, content, added_by, added_at) values"
                                + " (?, ?, ?, ?, ?, ?, ?, ?) returning id",
                        row -> row.getLong(1),
                        wanted.purchaseId(),
                        wanted.name(),
                        wanted.kind().name(),
                        wanted.octets(),
                        HexFormat.of().parseHex(wanted.sha256()),
                        content,
                        wanted.addedBy(),
                        wanted.addedAt())
                .orElseThrow();
        return find(id).orElseThrow();
    }

    public void remove(long id) {
        rows.run("delete from evidence where id = ?", id);
    }
}
