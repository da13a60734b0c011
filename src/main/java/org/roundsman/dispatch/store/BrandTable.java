package org.roundsman.dispatch.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import org.roundsman.reports.ReportLook.Brand;
import org.roundsman.system.Rows;

/** Brands; none ever changes, another takes its place. The firm's own has no customer. */
public final class BrandTable {

    private final Rows rows;

    public BrandTable(Rows rows) {
        this.rows = rows;
    }

    /** The one that is used today. */
    public Optional<Brand> now(OptionalLong customerId) {
        return rows.one(
                "select * from report_brand where customer_id is not distinct from ?::bigint and replaced_at is null",
                BrandTable::read,
                customerId);
    }

    /** One that is used today, or was. */
    public Optional<Brand> find(OptionalLong id) {
        return rows.one("select * from report_brand where id = ?::bigint", BrandTable::read, id);
    }

    /** Takes the place of the one that is used today. */
    public long save(OptionalLong customerId, Brand brand, Instant now) {
        rows.run(
                "update report_brand set replaced_at = ? where customer_id is not distinct from ?::bigint"
                        + " and replaced_at is null",
                now,
                customerId);
        return add(customerId, brand, now, Optional.empty());
    }

    /** Id of the one that is used today; where there is none, of one that is made of the name, for one report only. */
    public long settled(OptionalLong customerId, Brand otherwise, Instant now) {
        return rows.one(
                        "select id from report_brand where customer_id is not distinct from ?::bigint"
                                + " and replaced_at is null",
                        row -> row.getLong(1),
                        customerId)
                .orElseGet(() -> add(customerId, otherwise, now, Optional.of(now)));
    }

    private long add(OptionalLong customerId, Brand brand, Instant now, Optional<Instant> replaced) {
        return rows.one(
                        "insert into report_brand (customer_id, name, colour, logo, logo_type, lines, made_at, replaced_at)"
                                + " values (?, ?, ?, nullif(?::bytea, ''::bytea), ?, ?, ?, ?::timestamptz) returning id",
                        row -> row.getLong(1),
                        customerId,
                        brand.name(),
                        brand.colour(),
                        brand.logo(),
                        brand.logoType(),
                        brand.lines(),
                        now,
                        replaced.map(at -> at.atOffset(java.time.ZoneOffset.UTC)))
                .orElseThrow();
    }

    /** Removes those that neither are used today nor stand in a report. */
    public int removeUnused() {
        return rows.run("delete from report_brand b where replaced_at is not null and not exists (select from report r"
                + " where r.firm_brand = b.id or r.customer_brand = b.id)");
    }

    private static Brand read(ResultSet row) throws SQLException {
        byte[] logo = row.getBytes("logo");
        return new Brand(
                row.getString("name"),
                row.getString("colour"),
                logo == null ? new byte[0] : logo,
                row.getString("logo_type"),
                Rows.texts(row, "lines"));
    }
}
