package org.roundsman.alarms.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Collection;
import java.util.Iterator;
import java.util.List;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.life.AlarmState;
import org.roundsman.alarms.life.Handling;

/** Writes alarms and their episodes, many at once. */
final class EpisodeRows {

    private static final String ADD_ALARM = "insert into alarm (id, type, resource_kind, resource_id, part, qualifier,"
            + " episode_id) values (?, ?, ?, ?, ?, ?, ?)";

    private static final String ADD = "insert into alarm_episode (id, alarm_id, type, device_id, customer_id,"
            + " customer, site_id, site, time_zone, resource_name, place, began, raised, changed, cleared, severity,"
            + " highest, text, text_at, summary, operator, operator_by, operator_until, operator_reason, taken_by) values"
            + " (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";

    private static final String CHANGE = "update alarm_episode set changed = ?, cleared = ?, severity = ?, highest = ?,"
            + " text = ?, text_at = ?, summary = ?, operator = ?, operator_by = ?, operator_until = ?,"
            + " operator_reason = ?, taken_by = ? where id = ?";

    private EpisodeRows() {}

    /** Gives numbers to whatever has none, and writes everything. */
    static void write(Connection connection, Collection<EpisodeDraft> episodes) throws SQLException {
        List<EpisodeDraft> fresh =
                episodes.stream().filter(e -> e.fresh().isPresent()).toList();
        List<EpisodeDraft> known =
                episodes.stream().filter(e -> e.fresh().isEmpty()).toList();
        List<Held> unnumbered = fresh.stream()
                .map(EpisodeDraft::alarm)
                .filter(alarm -> alarm.alarmId() == 0)
                .distinct()
                .toList();
        Iterator<Long> alarmIds = numbers(connection, "alarm", unnumbered.size());
        Iterator<Long> episodeIds = numbers(connection, "alarm_episode", fresh.size());
        fresh.forEach(episode -> episode.id(episodeIds.next()));
        unnumbered.forEach(alarm -> alarm.alarmId(alarmIds.next()));
        Sql.batch(connection, CHANGE, known.stream().map(EpisodeRows::changed).toList());
        Sql.batch(
                connection,
                ADD_ALARM,
                unnumbered.stream().map(EpisodeRows::alarm).toList());
        Sql.batch(connection, ADD, fresh.stream().map(EpisodeRows::added).toList());
        Sql.batch(
                connection,
                "update alarm set episode_id = ? where id = ?",
                fresh.stream()
                        .map(EpisodeDraft::alarm)
                        .filter(Held::known)
                        .distinct()
                        .map(alarm -> new Sql.Row(alarm.episode().orElseThrow().id(), alarm.alarmId()))
                        .toList());
    }

    private static Iterator<Long> numbers(Connection connection, String table, int count) throws SQLException {
        return Sql.rows(
                        connection,
                        "select nextval(pg_get_serial_sequence(?, 'id')) from generate_series(1, ?)",
                        row -> row.getLong(1),
                        table,
                        count)
                .iterator();
    }

    private static Sql.Row alarm(Held alarm) {
        AlarmKey key = alarm.key();
        Resource resource = key.resource();
        return new Sql.Row(
                alarm.alarmId(),
                key.type().id(),
                resource.kind().name(),
                resource.id(),
                resource.part(),
                key.qualifier(),
                alarm.episode().orElseThrow().id());
    }

    private static Sql.Row added(EpisodeDraft episode) {
        AlarmKey key = episode.alarm().key();
        Resource resource = key.resource();
        Whereabouts at = episode.fresh().orElseThrow();
        AlarmState state = episode.state();
        Handling handling = state.handling();
        return new Sql.Row(
                episode.id(),
                episode.alarm().alarmId(),
                key.type().id(),
                resource.kind() == Resource.Kind.DEVICE ? resource.id() : null,
                at.customerId(),
                at.customer(),
                at.siteId(),
                at.site(),
                at.timeZone(),
                at.named(resource),
                at.place(),
                state.began(),
                state.raised(),
                state.changed(),
                state.cleared(),
                state.severity().code(),
                state.highest().code(),
                state.text(),
                state.textAt(),
                state.summary(),
                handling.state().name(),
                handling.by(),
                handling.until(),
                handling.reason(),
                handling.takenBy());
    }

    private static Sql.Row changed(EpisodeDraft episode) {
        AlarmState state = episode.state();
        Handling handling = state.handling();
        return new Sql.Row(
                state.changed(),
                state.cleared(),
                state.severity().code(),
                state.highest().code(),
                state.text(),
                state.textAt(),
                state.summary(),
                handling.state().name(),
                handling.by(),
                handling.until(),
                handling.reason(),
                handling.takenBy(),
                episode.id());
    }
}
