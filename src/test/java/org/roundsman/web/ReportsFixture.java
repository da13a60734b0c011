package org.roundsman.web;

import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.EnumSet;
import java.util.Set;
import javax.sql.DataSource;
import org.roundsman.dispatch.ReportState;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportExample;
import org.roundsman.reports.ReportJson;
import org.roundsman.reports.ReportSubject;

/** Kept reports for tests of pages, put into the tables as they would come to lie there. What they say is invented. */
@ApplicationScoped
public class ReportsFixture {

    private static final Set<ReportState> FOUND_GOOD =
            EnumSet.of(ReportState.REVIEWED, ReportState.SENDING, ReportState.SENT);

    private final ReportJson json;
    private final DataSource database;
    private final Clock clock;

    ReportsFixture(ReportJson json, DataSource database, Clock clock) {
        this.json = json;
        this.database = database;
        this.clock = clock;
    }

    /** Of a marked place: one that was sent, with a mail and a link, and one of other days that was not. */
    record Marked(long sentId, long unsentId, long mailId, long linkId) {

        /** As further alternatives of a pattern of addresses. */
        String either() {
            return "|/" + sentId + "|/" + unsentId + "|/" + mailId + "|/" + linkId;
        }
    }

    Marked mark(FleetFixture.Place place, String marker) {
        long sent = kept(place, lastMonth().minusMonths(1), 1, ReportState.SENT, marker);
        long unsent = kept(place, lastMonth(), 1, ReportState.TO_REVIEW, marker + "-unsent");
        plan(place.customerId(), true, marker + "@brook.example");
        long link = number(
                "insert into report_link (report_id, hash, made_at, made_by, until_at) values (?,"
                        + " sha256(convert_to(?, 'UTF8')), now(), ?, now() + interval '9 days') returning id",
                sent,
                marker,
                marker);
        return new Marked(sent, unsent, mail(sent, marker + "@brook.example", "SENT", ""), link);
    }

    /** The last one that is over, whose desk opens by itself. */
    YearMonth lastMonth() {
        return YearMonth.from(LocalDate.now(clock)).minusMonths(1);
    }

    /** A report of that month in that state. Its figures are those of the example, under the customer's name. */
    long kept(FleetFixture.Place of, YearMonth month, int revision, ReportState state, String remark) {
        long id = number(
                "insert into report (customer_id, from_on, to_on, revision, state, language, paper, costs, remark,"
                        + " queued_at) values (?, ?, ?, ?, 'WAITING', 'en', 'A4', false, ?, now()) returning id",
                of.customerId(),
                month.atDay(1),
                month.plusMonths(1).atDay(1),
                revision,
                remark);
        if (state != ReportState.WAITING && state != ReportState.BUILDING && state != ReportState.FAILED) {
            built(id, of);
        }
        if (FOUND_GOOD.contains(state)) {
            tell("update report set state = 'REVIEWED', reviewed_by = 'wren', reviewed_at = now() where id = ?", id);
        }
        switch (state) {
            case BUILDING -> tell("update report set state = 'BUILDING', claim = gen_random_uuid() where id = ?", id);
            case FAILED ->
                tell("update report set state = 'FAILED', failure = 'The figures did not come.' where id = ?", id);
            case SENDING, SENT -> settled(id, of, state);
            case WAITING, TO_REVIEW, REVIEWED -> {}
        }
        return id;
    }

    /** As if it had been built just now. */
    void built(long id, FleetFixture.Place of) {
        Report says = says(of);
        byte[] figures = json.write(says);
        tell(
                "update report set state = 'TO_REVIEW', as_of = now(), built_at = now(), figures = ?,"
                        + " figures_sha256 = ?, observed = ? where id = ?",
                figures,
                json.sha256(figures),
                json.observed(says),
                id);
    }

    private void settled(long id, FleetFixture.Place of, ReportState state) {
        byte[] pdf = ("%PDF-1.7 invented, of " + of.customer()).getBytes(StandardCharsets.US_ASCII);
        String brand = "insert into report_brand (customer_id, name, made_at, replaced_at) values (?, ?, now(), now())"
                + " returning id";
        long firm = number(brand, null, "Fernhollow Networks");
        long customer = number(brand, of.customerId(), of.customer());
        tell(
                "update report set state = 'SENDING', settled_at = now(), firm_brand = ?, customer_brand = ?, pdf = ?,"
                        + " pdf_sha256 = ?, file_name = 'invented.pdf' where id = ?",
                firm,
                customer,
                pdf,
                json.sha256(pdf),
                id);
        if (state == ReportState.SENT) {
            tell("update report set state = 'SENT', sent_at = now() where id = ?", id);
        }
    }

    private static Report says(FleetFixture.Place of) {
        Report full = ReportExample.full();
        ReportSubject subject = new ReportSubject(
                of.customerId(),
                of.customer(),
                full.subject().from(),
                full.subject().to());
        return new Report(
                full.form(),
                subject,
                full.asOf(),
                full.invented(),
                full.whole(),
                full.service(),
                full.crowd(),
                full.sites(),
                full.outages(),
                full.radios(),
                full.rooms(),
                full.equipment(),
                full.handling(),
                full.work(),
                full.recommendations());
    }

    /** A plan with one recipient, that builds by itself, or does not. */
    void plan(long customerId, boolean active, String recipient) {
        tell(
                "insert into report_plan (customer_id, active, day, hour, time_zone, language, paper, recipients,"
                        + " approval, costs, keep_months, next_month, changed_at) values (?, ?, 3, 6, 'Europe/Berlin',"
                        + " 'en', 'A4', array[?], true, false, 24, ?, now())",
                customerId,
                active,
                recipient,
                active ? lastMonth().plusMonths(1).atDay(1) : null);
    }

    /** A mail in that state. */
    long mail(long report, String to, String state, String why) {
        return number(
                "insert into report_mail (report_id, recipient, state, made_at, due_at, give_up_at, attempts, sent_at,"
                        + " why) values (?, ?, ?, now(), now(), now() + interval '2 days', 1, case when ? then now() end,"
                        + " ?) returning id",
                report,
                to,
                state,
                state.equals("SENT"),
                why);
    }

    private long number(String question, Object... values) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(question)) {
            fill(statement, values);
            try (ResultSet row = statement.executeQuery()) {
                row.next();
                return row.getLong(1);
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private void tell(String change, Object... values) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(change)) {
            fill(statement, values);
            statement.executeUpdate();
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void fill(PreparedStatement statement, Object... values) throws SQLException {
        for (int i = 0; i < values.length; i++) {
            statement.setObject(i + 1, values[i]);
        }
    }
}
