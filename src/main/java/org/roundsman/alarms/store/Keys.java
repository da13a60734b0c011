package org.roundsman.alarms.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Resource;

/** Keys of alarms in questions and answers. */
final class Keys {

    /** Joins alarm a with the keys that {@link #parameters} gives. */
    static final String JOIN = """
             join unnest(?::text[], ?::text[], ?::bigint[], ?::text[], ?::text[]) as k(type, kind, id, part, qualifier)
            on a.type = k.type and a.resource_kind = k.kind and a.resource_id = k.id and a.part = k.part
            and a.qualifier = k.qualifier""";

    /** The columns that {@link #read} needs. */
    static final String COLUMNS = "a.type, a.resource_kind, a.resource_id, a.part, a.qualifier";

    private Keys() {}

    static Object[] parameters(Collection<AlarmKey> keys) {
        List<String> types = new ArrayList<>();
        List<String> kinds = new ArrayList<>();
        List<Long> ids = new ArrayList<>();
        List<String> parts = new ArrayList<>();
        List<String> qualifiers = new ArrayList<>();
        for (AlarmKey key : keys) {
            types.add(key.type().id());
            kinds.add(key.resource().kind().name());
            ids.add(key.resource().id());
            parts.add(key.resource().part());
            qualifiers.add(key.qualifier());
        }
        return new Object[] {types, kinds, new Sql.Ids(ids), parts, qualifiers};
    }

    static AlarmKey read(ResultSet row) throws SQLException {
        String type = row.getString("type");
        Resource resource = new Resource(
                Resource.Kind.valueOf(row.getString("resource_kind")),
                row.getLong("resource_id"),
                row.getString("part"));
        return new AlarmKey(
                AlarmType.byId(type).orElseThrow(() -> new IllegalStateException("no alarm type " + type)),
                resource,
                row.getString("qualifier"));
    }
}
