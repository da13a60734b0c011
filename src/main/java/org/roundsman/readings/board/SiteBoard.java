package org.roundsman.readings.board;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.measure.Condition;
import org.roundsman.readings.BoardQuery;
import org.roundsman.readings.FleetTotals;
import org.roundsman.readings.Ribbon;
import org.roundsman.readings.SiteRow;
import org.roundsman.readings.sql.Sql;
import org.roundsman.shared.Page;

/** Sites as they are now: one statement for the page's sites and one for their ribbons. */
public final class SiteBoard {

    private static final String COUNTS = """
            select site_id,
                   count(*) filter (where kind = 'ACCESS_POINT') access_points,
                   count(*) filter (where kind = 'ACCESS_POINT' and condition = 1) answering,
                   count(*) filter (where kind = 'ACCESS_POINT' and condition = 2) silent,
                   count(*) filter (where kind = 'ACCESS_POINT' and condition = 3) refusing,
                   count(*) filter (where kind = 'ACCESS_POINT' and condition = 4) unwatched,
                   count(*) filter (where kind <> 'ACCESS_POINT') other_devices,
                   count(*) filter (where kind <> 'ACCESS_POINT' and condition in (2, 3)) other_trouble,
                   min(since) filter (where condition in (2, 3)) trouble_since,
                   sum(clients) filter (where kind = 'ACCESS_POINT' and condition = 1) clients,
                   max(busiest_utilisation) filter (where kind = 'ACCESS_POINT' and condition = 1) utilisation
              from unit group by site_id
            """;

    private final Connection connection;
    private final Moment moment;

    public SiteBoard(Connection connection, Moment moment) {
        this.connection = connection;
        this.moment = moment;
    }

    public FleetTotals totals(CustomerScope scope) throws SQLException {
        BoardSql sql = new BoardSql().add("with unit as (").units(scope, moment.at(), moment.watchedSince());
        sql.add("), site_now as (" + COUNTS + ") select count(distinct s.customer_id) customers, count(*) sites,"
                        + " coalesce(sum(access_points), 0) access_points, coalesce(sum(answering), 0) answering,"
                        + " coalesce(sum(silent), 0) silent, coalesce(sum(refusing), 0) refusing,"
                        + " coalesce(sum(unwatched), 0) unwatched, coalesce(sum(other_devices), 0) other_devices,"
                        + " coalesce(sum(other_trouble), 0) other_trouble, coalesce(sum(clients), 0) clients"
                        + " from site s left join site_now n on n.site_id = s.id where true")
                .only(scope);
        try (var statement = sql.prepare(connection);
                ResultSet row = statement.executeQuery()) {
            row.next();
            return new FleetTotals(
                    row.getInt("customers"),
                    row.getInt("sites"),
                    row.getInt("access_points"),
                    row.getInt("answering"),
                    row.getInt("silent"),
                    row.getInt("refusing"),
                    row.getInt("unwatched"),
                    row.getInt("other_devices"),
                    row.getInt("other_trouble"),
                    row.getLong("clients"));
        }
    }

    public Page<SiteRow> page(CustomerScope scope, BoardQuery query) throws SQLException {
        BoardSql.Found<SiteRow> found = find(scope, query, query.size(), (query.page() - 1L) * query.size());
        if (found.rows().isEmpty() && query.page() > 1) {
            return new Page<>(
                    List.of(),
                    query.page(),
                    query.size(),
                    find(scope, query, 1, 0).total());
        }
        return new Page<>(withRibbons(found.rows()), query.page(), query.size(), found.total());
    }

    public Optional<SiteRow> site(CustomerScope scope, long siteId) throws SQLException {
        BoardQuery first = BoardQuery.first();
        BoardQuery one = new BoardQuery(
                "",
                Optional.empty(),
                Optional.of(siteId),
                Optional.empty(),
                first.conditions(),
                first.sort(),
                false,
                1,
                1);
        return withRibbons(find(scope, one, 1, 0).rows()).stream().findFirst();
    }

    private BoardSql.Found<SiteRow> find(CustomerScope scope, BoardQuery query, int limit, long offset)
            throws SQLException {
        BoardSql sql = new BoardSql().add("with unit as (").units(scope, moment.at(), moment.watchedSince());
        query.siteId().ifPresent(id -> sql.add(" and s.id = ?", id));
        sql.add("), site_now as (" + COUNTS + "), page as (select s.id site_id, s.name site, s.customer_id,"
                        + " c.name customer, s.time_zone, n.access_points, n.answering, n.silent, n.refusing,"
                        + " n.unwatched, n.other_devices, n.other_trouble, n.trouble_since, n.clients, n.utilisation,"
                        + " count(*) over () total from site s join customer c on c.id = s.customer_id"
                        + " left join site_now n on n.site_id = s.id where true")
                .only(scope);
        query.siteId().ifPresent(id -> sql.add(" and s.id = ?", id));
        query.customerId().ifPresent(id -> sql.add(" and s.customer_id = ?", id));
        if (!query.conditions().isEmpty()) {
            sql.add(" and exists (select 1 from unit u where u.site_id = s.id")
                    .conditions("u.condition", query.conditions());
            sql.add(")");
        }
        query.only().ifPresent(ids -> sql.add(" and s.id in (select d.site_id from device d where ")
                .oneOf("d.id", ids)
                .add(")"));
        search(sql, query.search());
        String order = order(query);
        sql.add(" order by " + order + " limit ? offset ?)", limit, offset);
        sql.add(", busiest as (select distinct on (site_id) site_id, device_id, name device, busiest_radio,"
                + " busiest_utilisation from unit where site_id in (select site_id from page) and kind = 'ACCESS_POINT'"
                + " and condition = 1 and busiest_radio is not null"
                + " order by site_id, busiest_utilisation desc, device_id)");
        sql.add(" select p.*, b.device_id, b.device, b.busiest_radio, b.busiest_utilisation from page p"
                + " left join busiest b on b.site_id = p.site_id order by "
                + order.replace("s.name", "p.site")
                        .replace("c.name", "p.customer")
                        .replace("n.", "p.")
                        .replace("s.id", "p.site_id"));
        return sql.find(connection, SiteBoard::row);
    }

    private static void search(BoardSql sql, String search) {
        if (!search.isBlank()) {
            sql.add(" and (true").siteHas(search);
            sql.add(" or exists (select 1 from device d where d.site_id = s.id").deviceHas(search);
            sql.add("))");
        }
    }

    private static String order(BoardQuery query) {
        String way = query.descending() ? " desc" : " asc";
        String name = "lower(s.name)" + way + ", s.id";
        return switch (query.sort()) {
            case TROUBLE ->
                "(n.trouble_since is null)" + way + ", n.trouble_since" + way + ", lower(c.name), lower(s.name), s.id";
            case NAME -> name;
            case CUSTOMER -> "lower(c.name)" + way + ", " + name;
            case CLIENTS -> "n.clients" + way + " nulls last, " + name;
            case UTILISATION -> "n.utilisation" + way + " nulls last, " + name;
            case SINCE -> "n.trouble_since" + way + " nulls last, " + name;
        };
    }

    private static SiteRow row(ResultSet row) throws SQLException {
        return new SiteRow(
                row.getLong("site_id"),
                row.getString("site"),
                row.getLong("customer_id"),
                row.getString("customer"),
                row.getString("time_zone"),
                row.getInt("access_points"),
                row.getInt("answering"),
                row.getInt("silent"),
                row.getInt("refusing"),
                row.getInt("unwatched"),
                row.getInt("other_devices"),
                row.getInt("other_trouble"),
                Sql.instant(row, "trouble_since"),
                Sql.whole(row, "clients"),
                DeviceBoard.busiest(row, "device"),
                RibbonReader.BLANK);
    }

    private List<SiteRow> withRibbons(List<SiteRow> rows) throws SQLException {
        Map<Long, Ribbon> ribbons = new RibbonReader(connection, moment)
                .ofSites(rows.stream().map(SiteRow::siteId).toList());
        List<SiteRow> complete = new ArrayList<>();
        for (SiteRow row : rows) {
            Map<Condition, Integer> counts = Map.of(
                    Condition.ANSWERING, row.answering(),
                    Condition.SILENT, row.silent(),
                    Condition.REFUSING, row.refusing());
            Ribbon.Cell now = RibbonReader.now(row.clients(), row.busiest(), counts, row.accessPoints());
            complete.add(row.with(RibbonReader.upTo(ribbons.get(row.siteId()), now)));
        }
        return complete;
    }
}
