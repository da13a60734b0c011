package org.roundsman.alarms.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.Impact;
import org.roundsman.alarms.Verdict;

/** Stores what was worked out about active alarms; writes only what differs. In the transaction of the caller. */
public final class VerdictRows {

    private static final String ASK = "select a.id as alarm_id, " + Keys.COLUMNS + ", e.id as episode_id,"
            + " e.cleared is null as active, e.cause, e.caused_by, e.caused_by_episode, e.evidence, e.staff, e.guest,"
            + " e.other, e.devices, e.service_hours, e.settled, array(select f.device_id from alarm_affected f"
            + " where f.episode_id = e.id) as affected from alarm a join alarm_episode e on e.id = a.episode_id";

    private static final String STORE = "update alarm_episode set cause = ?, caused_by = ?, caused_by_episode = ?,"
            + " evidence = ?, staff = ?, guest = ?, other = ?, devices = ?, service_hours = ?, settled = ? where id = ?";

    private VerdictRows() {}

    private record Judged(long alarmId, long episodeId, boolean active, Judgement judgement, Set<Long> affected) {}

    private record Judgement(
            CauseKind cause,
            OptionalLong causedBy,
            OptionalLong causedByEpisode,
            List<String> evidence,
            Impact impact,
            boolean settled) {}

    /** Stores the last verdict of each key; of alarms that are not active none is kept. Gives the ids of alarms it changed. */
    public static Set<Long> judge(Connection connection, List<Verdict> verdicts) throws SQLException {
        Set<AlarmKey> keys = new LinkedHashSet<>();
        for (Verdict verdict : verdicts) {
            keys.add(verdict.key());
            verdict.causedBy().ifPresent(keys::add);
        }
        if (keys.isEmpty()) {
            return Set.of();
        }
        Map<AlarmKey, Judged> known = new HashMap<>();
        Sql.rows(connection, ASK + Keys.JOIN, row -> known.put(Keys.read(row), judged(row)), Keys.parameters(keys));
        return store(connection, verdicts, known);
    }

    private static Set<Long> store(Connection connection, List<Verdict> verdicts, Map<AlarmKey, Judged> known)
            throws SQLException {
        Map<AlarmKey, Verdict> last = new java.util.LinkedHashMap<>();
        verdicts.forEach(verdict -> last.put(verdict.key(), verdict));
        Set<Long> changed = new LinkedHashSet<>();
        List<Sql.Row> rows = new ArrayList<>();
        List<Sql.Row> gone = new ArrayList<>();
        List<Sql.Row> joined = new ArrayList<>();
        for (Verdict verdict : last.values()) {
            Judged before = known.get(verdict.key());
            if (before == null || !before.active()) {
                continue;
            }
            Judgement judgement = judgement(verdict, known);
            if (!judgement.equals(before.judgement())) {
                rows.add(row(judgement, before.episodeId()));
                changed.add(before.alarmId());
            }
            if (!verdict.affected().equals(before.affected())) {
                affected(verdict, before, gone, joined);
                changed.add(before.alarmId());
            }
        }
        Sql.batch(connection, STORE, rows);
        Sql.batch(connection, "delete from alarm_affected where episode_id = ? and device_id = any(?)", gone);
        Sql.batch(
                connection,
                "insert into alarm_affected (episode_id, device_id, name) select ?, id, name from device where id ="
                        + " any(?)",
                joined);
        return changed;
    }

    private static void affected(Verdict verdict, Judged before, List<Sql.Row> gone, List<Sql.Row> joined) {
        Set<Long> less = new LinkedHashSet<>(before.affected());
        less.removeAll(verdict.affected());
        if (!less.isEmpty()) {
            gone.add(new Sql.Row(before.episodeId(), new Sql.Ids(less)));
        }
        Set<Long> more = new LinkedHashSet<>(verdict.affected());
        more.removeAll(before.affected());
        if (!more.isEmpty()) {
            joined.add(new Sql.Row(before.episodeId(), new Sql.Ids(more)));
        }
    }

    private static Judgement judgement(Verdict verdict, Map<AlarmKey, Judged> known) {
        Judged cause = verdict.causedBy().map(known::get).orElse(null);
        return new Judgement(
                verdict.cause(),
                cause == null ? OptionalLong.empty() : OptionalLong.of(cause.alarmId()),
                cause == null ? OptionalLong.empty() : OptionalLong.of(cause.episodeId()),
                verdict.evidence(),
                verdict.impact(),
                verdict.settled());
    }

    private static Sql.Row row(Judgement judgement, long episodeId) {
        Impact impact = judgement.impact();
        return new Sql.Row(
                judgement.cause().name(),
                judgement.causedBy(),
                judgement.causedByEpisode(),
                judgement.evidence(),
                impact.staff(),
                impact.guest(),
                impact.other(),
                impact.devices(),
                impact.serviceHours(),
                judgement.settled(),
                episodeId);
    }

    private static Judged judged(ResultSet row) throws SQLException {
        Judgement judgement = new Judgement(
                CauseKind.valueOf(row.getString("cause")),
                Sql.wide(row, "caused_by"),
                Sql.wide(row, "caused_by_episode"),
                Sql.texts(row, "evidence"),
                impact(row),
                row.getBoolean("settled"));
        Set<Long> affected =
                Arrays.stream((Long[]) row.getArray("affected").getArray()).collect(Collectors.toSet());
        return new Judged(
                row.getLong("alarm_id"), row.getLong("episode_id"), row.getBoolean("active"), judgement, affected);
    }

    static Impact impact(ResultSet row) throws SQLException {
        return new Impact(
                Sql.number(row, "staff"),
                Sql.number(row, "guest"),
                Sql.number(row, "other"),
                row.getInt("devices"),
                row.getBoolean("service_hours"));
    }

    /** Which active episodes lie in planned work now; gives the ids of alarms for which that is new. */
    public static Set<Long> planned(Connection connection, Set<Long> alarmIds) throws SQLException {
        return new LinkedHashSet<>(Sql.rows(
                connection,
                "update alarm_episode set planned = not planned, was_planned = true where cleared is null"
                        + " and planned <> (alarm_id = any(?)) returning alarm_id",
                row -> row.getLong(1),
                new Sql.Ids(alarmIds)));
    }
}
