package org.roundsman.readings.rollup;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Collection;
import org.roundsman.readings.sql.Sql;

/** Builds the quarter hours of sites from those of their access points and from condition spans. */
final class SiteQuarters {

    private static final String BUILD = """
            with p as (select ?::timestamptz from_at, ?::timestamptz to_at, ?::timestamptz now),
            ap as materialized (
                select id, site_id from device where kind = 'ACCESS_POINT' and (?::bigint[] is null or site_id = any (?))),
            site_ap as (select site_id, count(*) n from ap group by site_id),
            c as (
                select ap.site_id, q.at, sum(q.clients_mean::float8) figure
                  from quarter_device q join ap on ap.id = q.device_id
                 where q.at >= ?::timestamptz and q.at < ?::timestamptz and q.clients_n > 0 group by ap.site_id, q.at),
            u as (
                select ap.site_id, q.at, max(q.utilisation_mean) figure
                  from quarter_radio q join ap on ap.id = q.device_id
                 where q.at >= ?::timestamptz and q.at < ?::timestamptz and q.utilisation_n > 0
                 group by ap.site_id, q.at),
            t as (
                select ap.site_id, g.at, x.condition,
                       sum(extract(epoch from least(e.to_at, g.at + interval '15 minutes')
                                            - greatest(x.from_at, g.at))) seconds
                  from p cross join span x
                  join ap on ap.id = x.device_id
                  left join device_now n on n.device_id = x.device_id
                 cross join lateral (
                       select least(coalesce(x.to_at, n.last_round_at + n.next_in_s * interval '1 second'),
                                    p.to_at, p.now) to_at) e
                 cross join lateral generate_series(
                       greatest(date_bin('15 minutes', x.from_at, '2000-01-01 00:00+00'), p.from_at),
                       e.to_at - interval '1 microsecond', interval '15 minutes') g (at)
                 where x.condition <> 4 and x.from_at < ?::timestamptz
                   and (x.to_at is null or x.to_at > ?::timestamptz)
                 group by ap.site_id, g.at, x.condition),
            s as (
                select site_id, at, sum(seconds) filter (where condition = 1) answering,
                       sum(seconds) filter (where condition = 2) silent,
                       sum(seconds) filter (where condition = 3) refusing
                  from t group by site_id, at),
            k as (select site_id, at from c union select site_id, at from u union select site_id, at from s)
            insert into quarter_site (site_id, at, clients_mean, utilisation_max, answering_s, silent_s, refusing_s,
                                      covered_s)
            select k.site_id, k.at, c.figure, u.figure, coalesce(round(s.answering), 0),
                   coalesce(round(s.silent), 0), coalesce(round(s.refusing), 0),
                   round(a.n * extract(epoch from least(interval '15 minutes', p.now - k.at)))
              from p cross join k
              join site_ap a on a.site_id = k.site_id
              left join c on c.site_id = k.site_id and c.at = k.at
              left join u on u.site_id = k.site_id and u.at = k.at
              left join s on s.site_id = k.site_id and s.at = k.at
             where k.at < p.now
            """;

    private SiteQuarters() {}

    /**
     * Builds the quarter hours from {@code from} to {@code to} anew.
     *
     * @param sites only these, or null for all
     */
    static void build(Connection connection, Instant from, Instant to, Instant now, Collection<Long> sites)
            throws SQLException {
        var start = Sql.time(from);
        var end = Sql.time(to);
        var only = sites == null ? null : Sql.ids(connection, sites);
        Sql.run(
                connection,
                "delete from quarter_site where at >= ? and at < ? and (?::bigint[] is null or site_id = any (?))",
                start,
                end,
                only,
                only);
        Sql.run(connection, BUILD, start, end, Sql.time(now), only, only, start, end, start, end, end, start);
    }
}
