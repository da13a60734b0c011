package org.roundsman.readings.board;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Outcome;
import org.roundsman.readings.BoardQuery;
import org.roundsman.readings.BusiestRadio;
import org.roundsman.readings.DeviceRow;
import org.roundsman.readings.Ribbon;
import org.roundsman.readings.sql.Sql;
import org.roundsman.shared.Page;

/** Devices as they are now: one statement for the page's devices and three for their ribbons. */
public final class DeviceBoard {

    private final Connection connection;
    private final Moment moment;

    public DeviceBoard(Connection connection, Moment moment) {
        this.connection = connection;
        this.moment = moment;
    }

    public Page<DeviceRow> page(CustomerScope scope, BoardQuery query) throws SQLException {
        String order = order(query);
        Cut cut = new Cut("", Optional.empty(), order, query.size(), (query.page() - 1L) * query.size());
        BoardSql.Found<DeviceRow> found = find(scope, query, cut);
        if (found.rows().isEmpty() && query.page() > 1) {
            long total = find(scope, query, new Cut("", Optional.empty(), order, 1, 0))
                    .total();
            return new Page<>(List.of(), query.page(), query.size(), total);
        }
        return new Page<>(withRibbons(found.rows()), query.page(), query.size(), found.total());
    }

    /** By ascending id, with blank ribbons. */
    public List<DeviceRow> after(CustomerScope scope, BoardQuery query, long after, int most) throws SQLException {
        Cut cut = new Cut(" and d.id > ?", Optional.of(after), "u.device_id", most, 0);
        return find(scope, query, cut).rows();
    }

    public Optional<DeviceRow> device(CustomerScope scope, long deviceId) throws SQLException {
        Cut cut = new Cut(" and d.id = ?", Optional.of(deviceId), "u.device_id", 1, 0);
        List<DeviceRow> rows = find(scope, BoardQuery.first(), cut).rows();
        return withRibbons(rows).stream().findFirst();
    }

    /**
     * Which rows of all that fit.
     *
     * @param only a condition on the id, or empty
     * @param order columns of the units as {@code u}
     */
    private record Cut(String only, Optional<Long> id, String order, int limit, long offset) {}

    private BoardSql.Found<DeviceRow> find(CustomerScope scope, BoardQuery query, Cut cut) throws SQLException {
        BoardSql sql = new BoardSql().add("with page as (select u.*, count(*) over () total from (");
        sql.units(scope, moment.at(), moment.watchedSince());
        cut.id().ifPresent(id -> sql.add(cut.only(), id));
        query.customerId().ifPresent(id -> sql.add(" and s.customer_id = ?", id));
        query.siteId().ifPresent(id -> sql.add(" and s.id = ?", id));
        query.kind().ifPresent(kind -> sql.add(" and d.kind = ?", kind.name()));
        query.only().ifPresent(ids -> sql.add(" and ").oneOf("d.id", ids));
        sql.deviceHas(query.search()).add(") u where true").conditions("u.condition", query.conditions());
        sql.add(" order by " + cut.order() + " limit ? offset ?)", cut.limit(), cut.offset());
        sql.add(" select p.*, coalesce(f.model, m.name, '') model, coalesce(f.firmware, '') firmware from page p"
                + " left join model m on m.id = p.model_id"
                + " left join lateral (select max(value) filter (where fact = 'MODEL') model,"
                + " max(value) filter (where fact = 'FIRMWARE') firmware from device_fact"
                + " where device_id = p.device_id) f on true order by "
                + cut.order().replace("u.", "p."));
        return sql.find(connection, this::row);
    }

    private static String order(BoardQuery query) {
        String way = query.descending() ? " desc" : " asc";
        String name = "lower(u.name)" + way + ", u.device_id";
        return switch (query.sort()) {
            case TROUBLE ->
                "(u.condition in (2, 3))" + (query.descending() ? " asc" : " desc")
                        + ", case when u.condition in (2, 3) then u.since end" + way
                        + ", lower(u.customer), lower(u.site), lower(u.name), u.device_id";
            case NAME -> name;
            case CUSTOMER -> "lower(u.customer)" + way + ", lower(u.site)" + way + ", " + name;
            case CLIENTS -> "case when u.condition = 1 then u.clients end" + way + " nulls last, " + name;
            case UTILISATION ->
                "case when u.condition = 1 then u.busiest_utilisation end" + way + " nulls last, " + name;
            case SINCE -> "u.since" + way + " nulls last, " + name;
        };
    }

    private DeviceRow row(ResultSet row) throws SQLException {
        Condition condition = Condition.ofCode(row.getInt("condition"));
        boolean answering = condition == Condition.ANSWERING;
        OptionalInt outcome = Sql.whole(row, "outcome");
        return new DeviceRow(
                row.getLong("device_id"),
                row.getString("name"),
                DeviceKind.valueOf(row.getString("kind")),
                row.getString("place"),
                row.getString("host"),
                row.getLong("site_id"),
                row.getString("site"),
                row.getLong("customer_id"),
                row.getString("customer"),
                row.getString("time_zone"),
                condition,
                Sql.instant(row, "since"),
                Sql.instant(row, "last_answered_at"),
                outcome.isEmpty() ? Optional.empty() : Optional.of(Outcome.ofCode(outcome.getAsInt())),
                row.getBoolean("paused"),
                row.getString("model"),
                row.getString("firmware"),
                answering ? Sql.whole(row, "clients") : OptionalInt.empty(),
                Sql.real(row, "uptime"),
                answering ? busiest(row, "name") : Optional.empty(),
                RibbonReader.BLANK);
    }

    static Optional<BusiestRadio> busiest(ResultSet row, String nameColumn) throws SQLException {
        int number = row.getInt("busiest_radio");
        return row.wasNull()
                ? Optional.empty()
                : Optional.of(new BusiestRadio(
                        row.getLong("device_id"),
                        row.getString(nameColumn),
                        number,
                        row.getDouble("busiest_utilisation")));
    }

    private List<DeviceRow> withRibbons(List<DeviceRow> rows) throws SQLException {
        Map<Long, Ribbon> ribbons = new RibbonReader(connection, moment)
                .ofDevices(rows.stream().map(DeviceRow::deviceId).toList());
        List<DeviceRow> complete = new ArrayList<>();
        for (DeviceRow row : rows) {
            Ribbon.Cell now = RibbonReader.now(row.clients(), row.busiest(), Map.of(row.condition(), 1), 1);
            complete.add(row.with(RibbonReader.upTo(ribbons.get(row.deviceId()), now)));
        }
        return complete;
    }
}
