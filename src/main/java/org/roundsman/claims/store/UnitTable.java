package org.roundsman.claims.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.claims.Fate;
import org.roundsman.claims.Unit;
import org.roundsman.system.Rows;

/** The table of units. Works in the transaction of this thread. */
public final class UnitTable {

    static final String COLUMNS = "u.id, u.customer_id, coalesce(c.name, '') as customer, u.serial, u.model_id,"
            + " coalesce(m.maker || ' ' || m.name, '') as model, coalesce(m.outdoor, false) as outdoor,"
            + " coalesce(m.mains, false) as mains, u.mac, u.fate, u.known_since";

    static final String FROM =
            " from unit u left join customer c on c.id = u.customer_id left join model m on m.id = u.model_id";

    private static final String WHOLE = "select " + COLUMNS + FROM;

    private final Rows rows;

    public UnitTable(DataSource database) {
        this.rows = new Rows(database, "units, claims or spares");
    }

    static Unit unit(ResultSet row) throws SQLException {
        String fate = row.getString("fate");
        return new Unit(
                row.getLong("id"),
                Rows.id(row, "customer_id"),
                row.getString("customer"),
                row.getString("serial"),
                Rows.id(row, "model_id"),
                row.getString("model"),
                row.getBoolean("outdoor"),
                row.getBoolean("mains"),
                row.getString("mac"),
                fate.isEmpty() ? Optional.empty() : Optional.of(Fate.valueOf(fate)),
                Rows.instant(row, "known_since").orElseThrow());
    }

    public Optional<Unit> find(long id) {
        return rows.one(WHOLE + " where u.id = ?", UnitTable::unit, id);
    }

    /** Nobody else who does the same claims, moves or places that unit until the end of this thread's transaction. */
    public void hold(long id) {
        rows.list("select id from unit where id = ? for no key update", row -> row.getLong(1), id);
    }

    /** By its serial number, without regard to case. */
    public Optional<Unit> find(OptionalLong owner, String serial) {
        return rows.one(
                WHOLE + " where coalesce(u.customer_id, 0) = ? and lower(u.serial) = lower(?)",
                UnitTable::unit,
                owner.orElse(0),
                serial);
    }

    /** The unit of that serial number, made where it is not known yet. What is known of it already stays. */
    public Unit ensure(OptionalLong owner, String serial, OptionalLong model, String mac, Instant at) {
        rows.run(
                "insert into unit (customer_id, serial, model_id, mac, known_since) values (?, ?, ?, ?, ?)"
                        + " on conflict (coalesce(customer_id, 0), lower(serial)) do update set"
                        + " model_id = coalesce(unit.model_id, excluded.model_id),"
                        + " mac = case when unit.mac = '' then excluded.mac else unit.mac end",
                owner,
                serial,
                model,
                mac,
                at);
        return find(owner, serial).orElseThrow();
    }

    /** What became of it; empty where it stands or lies somewhere again. */
    public void fate(long id, Optional<Fate> fate, Instant at) {
        rows.run(
                "update unit set fate = ?, fate_since = ? where id = ?",
                fate.map(Enum::name).orElse(""),
                fate.isPresent() ? at : null,
                id);
    }

    public void owner(long id, OptionalLong owner) {
        rows.run("update unit set customer_id = ? where id = ?", owner, id);
    }

    public void model(long id, OptionalLong model) {
        rows.run("update unit set model_id = ? where id = ?", model, id);
    }

    /** Whether there is such a model. */
    public boolean hasModel(long model) {
        return rows.number("select count(*) from model where id = ?", model) == 1;
    }
}
