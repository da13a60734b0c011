package org.roundsman.readings.spans;

import java.sql.ResultSet;
import java.sql.SQLException;
import org.roundsman.measure.Condition;
import org.roundsman.readings.sql.Sql;

/** A stored span; {@code to} is null while it goes on. */
record PastSpan(long from, Long to, Condition condition) {

    static PastSpan of(ResultSet row) throws SQLException {
        return new PastSpan(
                Sql.millis(row, "from_at"),
                Sql.instant(row, "to_at").map(java.time.Instant::toEpochMilli).orElse(null),
                Condition.ofCode(row.getInt("condition")));
    }

    boolean reaches(long at) {
        return to == null || to >= at;
    }

    /** The state in which the round goes this closed span on, or null when it came too long after its end. */
    SpanState continuedBy(Round first) {
        if (to == null || first.at() <= to) {
            return null;
        }
        Round end = new Round(to, first.outcome(), first.nextSeconds());
        return first.at() <= end.blindAfter() ? SpanState.of(end, condition, from) : null;
    }
}
