package org.roundsman.alarms;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.alarms.store.HistoryRows;
import org.roundsman.alarms.store.OpenRows;
import org.roundsman.alarms.store.SearchRows;
import org.roundsman.alarms.store.Sql;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.shared.Page;

/**
 * Answers questions about alarms. Who sees one customer's alarms only is shown no names, reasons and notes of the firm's own
 * people. Thread-safe; asks the database each time.
 */
@ApplicationScoped
public class AlarmBook {

    /** More of the past of one alarm than this is not read at once. */
    public static final int MOST_OF_ONE = 1_000;

    private static final String NOW = " where e.id = a.episode_id and";
    private static final String ORDER = " order by e.severity desc, e.raised, e.id";

    private final DataSource database;

    @Inject
    public AlarmBook(DataSource database) {
        this.database = database;
    }

    /** Every active alarm, closed and shelved ones included; for the service's own use. */
    public Map<AlarmKey, OpenAlarm> active() {
        Map<AlarmKey, OpenAlarm> active = new HashMap<>();
        find(" where e.cleared is null").forEach(alarm -> active.put(alarm.key(), alarm));
        return active;
    }

    /** Active alarms that nobody closed, shelved ones included; the worst first, of those the oldest. */
    public List<OpenAlarm> open(CustomerScope scope) {
        Long only = scope.onlyCustomer();
        return find(
                scope,
                " where e.cleared is null and e.operator <> 'CLOSED' and" + OpenRows.IN_SCOPE + ORDER,
                only,
                only);
    }

    /** Alarms that are not active now and cleared at that moment or later, the last one first. */
    public List<OpenAlarm> recentlyCleared(CustomerScope scope, Instant since) {
        Long only = scope.onlyCustomer();
        return find(
                scope,
                NOW + " e.cleared >= ? and" + OpenRows.IN_SCOPE + " order by e.cleared desc, e.id desc",
                since,
                only,
                only);
    }

    /** An alarm with its current or last episode. */
    public Optional<OpenAlarm> find(CustomerScope scope, long alarmId) {
        Long only = scope.onlyCustomer();
        return find(scope, NOW + " a.id = ? and" + OpenRows.IN_SCOPE, alarmId, only, only).stream()
                .findFirst();
    }

    /** Active alarms of a device and its parts; the worst first. */
    public List<OpenAlarm> ofDevice(CustomerScope scope, long deviceId) {
        Long only = scope.onlyCustomer();
        return find(
                scope,
                " where e.cleared is null and e.device_id = ? and" + OpenRows.IN_SCOPE + ORDER,
                deviceId,
                only,
                only);
    }

    /** Active alarms of a site and its devices; the worst first. */
    public List<OpenAlarm> ofSite(CustomerScope scope, long siteId) {
        Long only = scope.onlyCustomer();
        return find(
                scope,
                " where e.cleared is null and e.site_id = ? and" + OpenRows.IN_SCOPE + ORDER,
                siteId,
                only,
                only);
    }

    /** Alarms whose last episode the current or last episode of this one explains, active or not; the worst first. */
    public List<OpenAlarm> explainedBy(CustomerScope scope, long alarmId) {
        Long only = scope.onlyCustomer();
        return find(
                scope,
                NOW + " e.caused_by_episode = (select c.episode_id from alarm c where c.id = ?) and" + OpenRows.IN_SCOPE
                        + ORDER,
                alarmId,
                only,
                only);
    }

    /** Status changes of an alarm, newest first; the last {@link #MOST_OF_ONE}. */
    public List<AlarmChange> changes(CustomerScope scope, long alarmId) {
        return changes(scope, alarmId, Long.MAX_VALUE, MOST_OF_ONE);
    }

    /** The same piece by piece: those with a smaller number than {@code before}, at most so many. */
    public List<AlarmChange> changes(CustomerScope scope, long alarmId, long before, int most) {
        return Sql.ask(database, connection -> HistoryRows.changes(connection, scope, alarmId, before, most));
    }

    /** What was done with an alarm, newest first; the last {@link #MOST_OF_ONE}. None for who sees one customer only. */
    public List<AlarmAct> acts(CustomerScope scope, long alarmId) {
        return acts(scope, alarmId, Long.MAX_VALUE, MOST_OF_ONE);
    }

    /** The same piece by piece: those with a smaller number than {@code before}, at most so many. */
    public List<AlarmAct> acts(CustomerScope scope, long alarmId, long before, int most) {
        if (scope instanceof CustomerScope.One) {
            return List.of();
        }
        return Sql.ask(database, connection -> HistoryRows.acts(connection, scope, alarmId, before, most));
    }

    /** Episodes of an alarm, newest first; the last {@link #MOST_OF_ONE}. */
    public List<Episode> episodes(CustomerScope scope, long alarmId) {
        return episodes(scope, alarmId, Long.MAX_VALUE, MOST_OF_ONE);
    }

    /** The same piece by piece: those with a smaller number than {@code before}, at most so many. */
    public List<Episode> episodes(CustomerScope scope, long alarmId, long before, int most) {
        return Sql.ask(database, connection -> HistoryRows.episodes(connection, scope, alarmId, before, most));
    }

    /** One page of episodes, each with its alarm, the newest raise first. */
    public Page<OpenAlarm> search(CustomerScope scope, AlarmSearch search) {
        Page<OpenAlarm> found = Sql.ask(database, connection -> SearchRows.search(connection, scope, search));
        return new Page<>(shown(scope, found.items()), found.number(), found.size(), found.total());
    }

    /** The same piece by piece, the last begun first: episodes with a smaller number than {@code before}, at most so many. */
    public List<OpenAlarm> search(CustomerScope scope, AlarmSearch search, long before, int most) {
        return shown(
                scope, Sql.ask(database, connection -> SearchRows.before(connection, scope, search, before, most)));
    }

    /** Status changes of all alarms with a greater number, oldest first; for the service's own use. */
    public List<AlarmChange> changesAfter(long changeId, int most) {
        return Sql.ask(database, connection -> HistoryRows.changesAfter(connection, changeId, most));
    }

    /** An alarm as it is, or was, in that episode; for the service's own use. */
    public Optional<OpenAlarm> episode(long episodeId) {
        return find(" where e.id = ?", episodeId).stream().findFirst();
    }

    private List<OpenAlarm> find(CustomerScope scope, String condition, Object... parameters) {
        return shown(scope, find(condition, parameters));
    }

    private static List<OpenAlarm> shown(CustomerScope scope, List<OpenAlarm> found) {
        return scope instanceof CustomerScope.One
                ? found.stream().map(OpenAlarm::withoutNames).toList()
                : found;
    }

    private List<OpenAlarm> find(String condition, Object... parameters) {
        return Sql.ask(database, connection -> OpenRows.find(connection, condition, parameters));
    }
}
