package org.roundsman.dispatch.store;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.roundsman.dispatch.ReportPlan;
import org.roundsman.dispatch.ReportState;
import org.roundsman.system.Rows;

/** Moves reports from state to state. Each move names the state it starts from, so that of two at once one moves nothing. */
public final class QueueTable {

    private static final String AGAIN = ", claim = null, reviewed_by = '', reviewed_at = null, settled_at = null,"
            + " firm_brand = null, customer_brand = null, pdf = null, pdf_sha256 = '', file_name = '', failure = ''";

    private final Rows rows;

    public QueueTable(Rows rows) {
        this.rows = rows;
    }

    /** One attempt to build a report. @param claim of the attempt: a later one has another, and the earlier stores nothing */
    public record Claimed(
            long id, UUID claim, long customerId, String customer, LocalDate from, LocalDate to, Instant asOf) {}

    /**
     * What was built.
     *
     * @param sha256 of the JSON
     * @param observed SHA-256 over what later data can change
     */
    public record Built(byte[] json, String sha256, String observed) {}

    /**
     * A PDF to be kept, and the figures that it shows.
     *
     * @param figures JSON
     */
    public record Printed(byte[] pdf, String sha256, String fileName, byte[] figures, String figuresSha256) {}

    /** Puts the first revision into the queue; empty where there is one already. */
    public Optional<Long> add(ReportPlan plan, LocalDate from, LocalDate to, Instant now) {
        return rows.one(
                "insert into report (customer_id, from_on, to_on, revision, state, language, paper, costs, queued_at)"
                        + " values (?, ?, ?, 1, 'WAITING', ?, ?, ?, ?)"
                        + " on conflict (customer_id, from_on, to_on, revision) do nothing returning id",
                row -> row.getLong(1),
                plan.customerId(),
                from,
                to,
                plan.language().toLanguageTag(),
                plan.paper().name(),
                plan.costs(),
                now);
    }

    /** Puts one that was not sent into the queue once more; it keeps its remark. */
    public boolean again(long id, Instant now) {
        return rows.run(
                        "update report set state = 'WAITING', queued_at = ?" + AGAIN
                                + " where id = ? and state in ('TO_REVIEW', 'REVIEWED', 'FAILED')",
                        now,
                        id)
                == 1;
    }

    /** Adds a further revision of one that was sent, built already and for the same moment; empty where there is one. */
    public Optional<Long> revise(long id, String why, Built built, Instant now) {
        return rows.one(
                "insert into report (customer_id, from_on, to_on, revision, state, language, paper, costs, remark, why,"
                        + " queued_at, as_of, built_at, figures, figures_sha256, observed) select customer_id, from_on,"
                        + " to_on, revision + 1, 'TO_REVIEW', language, paper, costs, remark, ?, ?, as_of, ?, ?, ?, ?"
                        + " from report where id = ? and state = 'SENT'"
                        + " on conflict (customer_id, from_on, to_on, revision) do nothing returning id",
                row -> row.getLong(1),
                why,
                now,
                now,
                built.json(),
                built.sha256(),
                built.observed(),
                id);
    }

    /** What was being built when the service ended waits again. */
    public int restart() {
        return rows.run("update report set state = 'WAITING', claim = null where state = 'BUILDING'");
    }

    /** Takes the one that waits longest, to be built as of now. */
    public Optional<Claimed> claim(Instant now) {
        return rows.one(
                "update report r set state = 'BUILDING', claim = gen_random_uuid(), failure = '' from customer c"
                        + " where c.id = r.customer_id and r.id = (select id from report where state = 'WAITING'"
                        + " order by queued_at, id limit 1 for update skip locked)"
                        + " returning r.id, r.claim, r.customer_id, c.name, r.from_on, r.to_on",
                row -> new Claimed(
                        row.getLong("id"),
                        row.getObject("claim", UUID.class),
                        row.getLong("customer_id"),
                        row.getString("name"),
                        Rows.day(row, "from_on").orElseThrow(),
                        Rows.day(row, "to_on").orElseThrow(),
                        now));
    }

    /** Stores what an attempt built, unless another took its place. */
    public boolean built(Claimed attempt, Built built, Instant now) {
        return rows.run(
                        "update report set state = 'TO_REVIEW', claim = null, as_of = ?, built_at = ?, figures = ?,"
                                + " figures_sha256 = ?, observed = ? where id = ? and claim = ? and state = 'BUILDING'",
                        attempt.asOf(),
                        now,
                        built.json(),
                        built.sha256(),
                        built.observed(),
                        attempt.id(),
                        attempt.claim())
                == 1;
    }

    /** An attempt failed. */
    public boolean failed(Claimed attempt, String why) {
        return rows.run(
                        "update report set state = 'FAILED', claim = null, failure = ?"
                                + " where id = ? and claim = ? and state = 'BUILDING'",
                        why,
                        attempt.id(),
                        attempt.claim())
                == 1;
    }

    /** How many wait or are being built. */
    public long waiting() {
        return rows.number("select count(*) from report where state in ('WAITING', 'BUILDING')");
    }

    public boolean remark(long id, String text) {
        return rows.run("update report set remark = ?" + OPEN, text, id) == 1;
    }

    public boolean look(long id, String language, String paper, boolean costs) {
        return rows.run("update report set language = ?, paper = ?, costs = ?" + OPEN, language, paper, costs, id) == 1;
    }

    private static final String OPEN =
            " where id = ? and state in ('WAITING', 'BUILDING', 'TO_REVIEW', 'FAILED') and settled_at is null";

    public boolean approve(long id, String by, Instant now) {
        return rows.run(
                        "update report set state = 'REVIEWED', reviewed_by = ?, reviewed_at = ?"
                                + " where id = ? and state = 'TO_REVIEW'",
                        by,
                        now,
                        id)
                == 1;
    }

    /** Back to be reviewed, from where it was reviewed, or was built and reached nobody. */
    public boolean reopen(long id) {
        return rows.run(
                        "update report set state = 'TO_REVIEW'" + AGAIN
                                + " where id = ? and state in ('REVIEWED', 'FAILED') and figures is not null",
                        id)
                == 1;
    }

    /** Settles how it looks and sets it on its way. */
    public boolean settle(long id, ReportState from, long firmBrand, long customerBrand, Instant now) {
        return rows.run(
                        "update report set state = 'SENDING', settled_at = ?, firm_brand = ?, customer_brand = ?,"
                                + " failure = '' where id = ? and state = ? and figures is not null",
                        now,
                        firmBrand,
                        customerBrand,
                        id,
                        from.name())
                == 1;
    }

    /** The one on its way that has waited longest for its PDF. */
    public Optional<Long> unprinted() {
        return rows.one(
                "select id from report where state = 'SENDING' and pdf is null order by settled_at, id limit 1",
                row -> row.getLong(1));
    }

    public boolean printed(long id, Printed printed) {
        return rows.run(
                        "update report set pdf = ?, pdf_sha256 = ?, file_name = ?, figures = ?, figures_sha256 = ?"
                                + " where id = ? and state = 'SENDING' and pdf is null",
                        printed.pdf(),
                        printed.sha256(),
                        printed.fileName(),
                        printed.figures(),
                        printed.figuresSha256(),
                        id)
                == 1;
    }

    /** From then on nothing of it changes. */
    public boolean sent(long id, Instant now) {
        return rows.run("update report set state = 'SENT', sent_at = ? where id = ? and state = 'SENDING'", now, id)
                == 1;
    }

    /** It is on its way no more, and reached nobody. */
    public boolean unreached(long id, String why) {
        return rows.run("update report set state = 'FAILED', failure = ? where id = ? and state = 'SENDING'", why, id)
                == 1;
    }

    /** On its way once more, as it was settled. */
    public boolean onWayAgain(long id) {
        return rows.run(
                        "update report set state = 'SENDING', failure = ''"
                                + " where id = ? and state = 'FAILED' and pdf is not null",
                        id)
                == 1;
    }

    /**
     * Of the newest revisions that were sent after {@code since}, the one that was checked for later data longest ago, or sent if
     * it never was, where that lies no later than {@code before}.
     */
    public Optional<Long> unchecked(Instant since, Instant before) {
        return rows.one(
                "select r.id from report r left join report_check c on c.report_id = r.id where r.state = 'SENT'"
                        + " and r.sent_at > ? and coalesce(c.checked_at, r.sent_at) <= ? and not exists (select from"
                        + " report n where n.customer_id = r.customer_id and n.from_on = r.from_on and n.to_on = r.to_on"
                        + " and n.revision > r.revision) order by coalesce(c.checked_at, r.sent_at), r.id limit 1",
                row -> row.getLong(1),
                since,
                before);
    }

    /** It was checked for later data; nothing where it is not there any more. */
    public void checked(long id, Instant now) {
        rows.run(
                "insert into report_check (report_id, checked_at) select id, ? from report where id = ?"
                        + " on conflict (report_id) do update set checked_at = excluded.checked_at",
                now,
                id);
    }

    /**
     * Removes the reports of a customer whose days ended before that, with all revisions; none of those days of which something
     * that was not sent was queued after {@code recent}.
     */
    public int remove(long customerId, LocalDate before, Instant recent) {
        return rows.run(
                "delete from report r where customer_id = ? and to_on <= ? and not exists (select from report n where"
                        + " n.customer_id = r.customer_id and n.from_on = r.from_on and n.to_on = r.to_on"
                        + " and n.state <> 'SENT' and n.queued_at > ?)",
                customerId,
                before,
                recent);
    }
}
