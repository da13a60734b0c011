package org.roundsman.alarms.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.Resource;

/** Whose a resource is and what it is called, as the fleet has it now: an episode keeps this, whatever becomes of the fleet. */
record Whereabouts(
        OptionalLong customerId,
        String customer,
        OptionalLong siteId,
        String site,
        String timeZone,
        String name,
        String place) {

    private static final Whereabouts SERVICE =
            new Whereabouts(OptionalLong.empty(), "", OptionalLong.empty(), "", "UTC", "", "");

    private static final String SITE = "s.id as site_id, s.name as site, s.time_zone, c.id as customer_id,"
            + " c.name as customer from site s join customer c on c.id = s.customer_id";

    /** Of each resource; what the fleet does not have any more is left out. The part of a device is not in the name yet. */
    static Map<Resource, Whereabouts> of(Connection connection, Collection<AlarmKey> keys) throws SQLException {
        Map<Resource, Whereabouts> found = new HashMap<>();
        found.put(Resource.service(), SERVICE);
        Sql.rows(
                connection,
                "select s.id, s.name as name, '' as place, " + SITE + " where s.id = any(?)",
                row -> found.put(Resource.site(row.getLong("id")), read(row)),
                ids(keys, Resource.Kind.SITE));
        Sql.rows(
                connection,
                "select d.id, d.name as name, d.place, " + SITE
                        + " join device d on d.site_id = s.id where d.id = any(?)",
                row -> found.put(Resource.device(row.getLong("id")), read(row)),
                ids(keys, Resource.Kind.DEVICE));
        return found;
    }

    private static Sql.Ids ids(Collection<AlarmKey> keys, Resource.Kind kind) {
        Set<Long> ids = keys.stream()
                .map(AlarmKey::resource)
                .filter(resource -> resource.kind() == kind)
                .map(Resource::id)
                .collect(Collectors.toSet());
        return new Sql.Ids(ids);
    }

    private static Whereabouts read(ResultSet row) throws SQLException {
        return new Whereabouts(
                Sql.wide(row, "customer_id"),
                row.getString("customer"),
                Sql.wide(row, "site_id"),
                row.getString("site"),
                row.getString("time_zone"),
                row.getString("name"),
                row.getString("place"));
    }

    /** What the resource is called, its part included. */
    String named(Resource resource) {
        return resource.part().isEmpty() ? name : name + ", " + resource.part();
    }
}
