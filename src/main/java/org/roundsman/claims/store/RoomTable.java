package org.roundsman.claims.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.claims.Shortage;
import org.roundsman.claims.StoreRoom;
import org.roundsman.system.Rows;

/** The tables of store rooms and of what should lie in them. Works in the transaction of this thread. */
public final class RoomTable {

    private static final String WHOLE = "select r.id, r.customer_id, coalesce(c.name, '') as customer, r.name, r.note,"
            + " (select count(*) from spare sp where sp.room_id = r.id and sp.left_at is null) as spares"
            + " from store_room r left join customer c on c.id = r.customer_id";

    private static final String SEEN = " (?::bigint is null or r.customer_id = ?::bigint)";

    private final Rows rows;

    public RoomTable(DataSource database) {
        this.rows = new Rows(database, "units, claims or spares");
    }

    private static StoreRoom room(ResultSet row) throws SQLException {
        return new StoreRoom(
                row.getLong("id"),
                Rows.id(row, "customer_id"),
                row.getString("customer"),
                row.getString("name"),
                row.getString("note"),
                row.getInt("spares"));
    }

    /** Of one customer, or null for all; the firm's own first. */
    public List<StoreRoom> all(Long customer) {
        return rows.list(
                WHOLE + " where" + SEEN + " order by c.name nulls first, lower(r.name)",
                RoomTable::room,
                customer,
                customer);
    }

    public Optional<StoreRoom> find(Long customer, long id) {
        return rows.one(WHOLE + " where r.id = ? and" + SEEN, RoomTable::room, id, customer, customer);
    }

    /** Nobody else adds or names a room until the end of this thread's transaction; both are rare and short. */
    public void holdNames() {
        rows.run("lock table store_room in share row exclusive mode");
    }

    /** Whether the owner has another room of that name. */
    public boolean taken(OptionalLong owner, String name, long except) {
        return rows.number(
                        "select count(*) from store_room where coalesce(customer_id, 0) = ? and lower(name) = lower(?)"
                                + " and id <> ?",
                        owner.orElse(0),
                        name,
                        except)
                > 0;
    }

    public long add(OptionalLong owner, String name, String note) {
        return rows.number(
                "insert into store_room (customer_id, name, note) values (?::bigint, ?, ?) returning id",
                owner,
                name,
                note);
    }

    public void change(long id, String name, String note) {
        rows.run("update store_room set name = ?, note = ? where id = ?", name, note, id);
    }

    /** Whether something lies there or lay there: then it is not removed. */
    public boolean used(long id) {
        return rows.number("select count(*) from spare where room_id = ?", id) > 0;
    }

    public void remove(long id) {
        rows.run("delete from store_room where id = ?", id);
    }

    /** How many of the model should lie there; 0 for no wish. */
    public int least(long room, long model) {
        return rows.one(
                        "select least from store_minimum where room_id = ? and model_id = ?",
                        row -> row.getInt(1),
                        room,
                        model)
                .orElse(0);
    }

    public void wish(long room, long model, int least) {
        if (least == 0) {
            rows.run("delete from store_minimum where room_id = ? and model_id = ?", room, model);
        } else {
            rows.run(
                    "insert into store_minimum (room_id, model_id, least) values (?, ?, ?)"
                            + " on conflict (room_id, model_id) do update set least = excluded.least",
                    room,
                    model,
                    least);
        }
    }

    /** What lies in rooms and what should, by room and model; of one customer, or null for all. */
    public List<Shortage> counts(Long customer) {
        return rows.list(
                "with there as (select sp.room_id, u.model_id, count(*) as n from spare sp join unit u on u.id ="
                        + " sp.unit_id where sp.left_at is null and sp.room_id is not null and u.model_id is not null"
                        + " group by 1, 2) select r.id, r.name || coalesce(', ' || c.name, '') as room, m.id as model_id,"
                        + " m.maker || ' ' || m.name as model, coalesce(t.n, 0) as there, coalesce(w.least, 0) as least"
                        + " from there t full join store_minimum w on w.room_id = t.room_id and w.model_id = t.model_id"
                        + " join store_room r on r.id = coalesce(t.room_id, w.room_id) left join customer c on c.id ="
                        + " r.customer_id join model m on m.id = coalesce(t.model_id, w.model_id) where" + SEEN
                        + " order by c.name nulls first, lower(r.name), lower(m.name)",
                row -> new Shortage(
                        row.getLong("id"),
                        row.getString("room"),
                        row.getLong("model_id"),
                        row.getString("model"),
                        row.getInt("there"),
                        row.getInt("least")),
                customer,
                customer);
    }
}
