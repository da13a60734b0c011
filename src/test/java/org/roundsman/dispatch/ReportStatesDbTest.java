package org.roundsman.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.roundsman.dispatch.DispatchFixture.NOVEMBER;
import static org.roundsman.dispatch.DispatchFixture.OCTOBER;

import java.time.YearMonth;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.mail.Letter;
import org.roundsman.reports.ReportLook.PaperSize;

/** What people can do with a report, and when. */
class ReportStatesDbTest {

    private static final YearMonth MONTH = YearMonth.of(2026, 10);

    private DispatchFixture at;
    private long customer;

    @BeforeEach
    void aCustomer() {
        at = DispatchFixture.on("report_states");
        customer = at.customer("Pebblegate Dental", "Europe/London");
        at.plan(customer, "owner@pebblegate.example");
    }

    private static void rejected(ThrowingCallable work, String why) {
        assertThatThrownBy(work).isInstanceOf(DeskRejected.class).hasMessageContaining(why);
    }

    @Test
    void aReportGoesFromTheQueueToItsReader() {
        long id = at.desk.build(customer, OCTOBER, NOVEMBER);
        assertThat(at.report(id).state()).isEqualTo(ReportState.WAITING);
        assertThat(at.builder.step()).isTrue();
        assertThat(at.report(id).state()).isEqualTo(ReportState.TO_REVIEW);
        at.desk.remark(id, "A quiet month.\r\n\r\nThe line will be mended.");
        at.desk.approve(id);
        assertThat(at.report(id).reviewedBy()).isEqualTo("roundsman");
        at.desk.send(id);
        assertThat(at.report(id).state()).isEqualTo(ReportState.SENDING);
        assertThat(at.report(id).prints().pdf()).isEmpty();
        assertThat(at.post(letter -> {}).step())
                .as("no mail goes out before its PDF is there")
                .isFalse();
        at.finish();
        List<Letter> letters = new java.util.ArrayList<>();
        assertThat(at.post(letters::add).step()).isTrue();
        KeptReport sent = at.report(id);
        assertThat(sent.state()).isEqualTo(ReportState.SENT);
        assertThat(sent.remark()).isEqualTo("A quiet month.\n\nThe line will be mended.");
        assertThat(sent.mails()).isEqualTo(new KeptReport.Mails(0, 1, 0, 0));
        assertThat(letters).singleElement().satisfies(letter -> {
            assertThat(letter.to()).isEqualTo("owner@pebblegate.example");
            assertThat(at.making.sha256(letter.attachments().get(0).octets()))
                    .isEqualTo(sent.prints().pdf());
        });
        assertThat(at.done(customer)).containsExactly("changed", "had built", "remarked on", "found good", "sent");
    }

    @Test
    void whatIsFoundGoodChangesOnlyAfterItIsReopened() {
        long id = at.built(customer);
        at.desk.approve(id);
        rejected(() -> at.desk.remark(id, "later"), "found good or sent");
        rejected(() -> at.desk.look(id, Locale.GERMANY, PaperSize.LETTER, true), "found good or sent");
        rejected(() -> at.desk.approve(id), "does not wait to be reviewed");
        at.desk.reopen(id);
        at.desk.remark(id, "later");
        at.desk.look(id, Locale.GERMANY, PaperSize.LETTER, true);
        KeptReport open = at.report(id);
        assertThat(open.remark()).isEqualTo("later");
        assertThat(open.language()).isEqualTo(Locale.GERMANY);
        assertThat(open.costs()).isTrue();
        assertThat(open.reviewedBy()).isEmpty();
        rejected(() -> at.desk.look(id, Locale.ITALY, PaperSize.A4, true), "this language");
    }

    @Test
    void whatCannotBeSentIsRejectedWithTheReason() {
        long id = at.built(customer);
        rejected(() -> at.desk.send(id), "somebody has to find it good first");
        at.desk.approve(id);
        at.plan(customer);
        rejected(() -> at.desk.send(id), "names no recipients");
        rejected(() -> at.desk.sendAgain(id, List.of("owner@pebblegate.example")), "that was sent");
        rejected(() -> at.desk.sendAgain(id, List.of("nobody")), "no mail address");
        rejected(() -> at.desk.send(id + 1000), "not there any more");
        assertThat(at.report(id).state()).isEqualTo(ReportState.REVIEWED);
        assertThat(at.report(id).mails().waiting()).isZero();
    }

    @Test
    void allThatWereFoundGoodAreSentAtOnce() {
        long second = at.customer("Saltmarsh Ferry Line", "Europe/Berlin");
        long mute = at.customer("Tidewater Books", "Europe/Berlin");
        at.plan(second, "piers@saltmarsh.example");
        List<Long> all = List.of(at.built(customer), at.built(second), at.built(mute));
        rejected(() -> at.desk.sendAll(MONTH), "No report of this month was found good");
        at.desk.approve(all.get(1));
        at.desk.approve(all.get(2));
        assertThat(at.desk.sendAll(MONTH)).as("one has no recipients").isEqualTo(1);
        assertThat(all)
                .extracting(id -> at.report(id).state())
                .containsExactly(ReportState.TO_REVIEW, ReportState.SENDING, ReportState.REVIEWED);
    }

    @Test
    void aMonthThatIsNotOverEverywhereIsNotBuilt() {
        long far = at.customer("Saltmarsh Ferry Line", "Europe/London", "Pacific/Honolulu");
        // midnight in Honolulu is 10:00 UTC (IANA time zone database); an hour later it may be built
        at.clock.turn("2026-11-01T10:59:59Z");
        rejected(() -> at.desk.build(far, OCTOBER, NOVEMBER), "not over at every site");
        assertThat(at.desk.buildAll(MONTH)).as("the other customer's is over").isEqualTo(1);
        at.clock.turn("2026-11-01T11:00:00Z");
        assertThat(at.desk.buildAll(MONTH)).isEqualTo(1);
        assertThat(at.desk.buildAll(MONTH)).as("each once").isZero();
        rejected(() -> at.desk.build(at.customer("Without a site"), OCTOBER, NOVEMBER), "has no site");
    }

    @Test
    void whatWasNotSentIsBuiltAnewAndKeepsItsRemark() {
        long id = at.built(customer);
        at.desk.remark(id, "As discussed.");
        at.desk.approve(id);
        String before = at.report(id).prints().figures();
        at.clock.turn("2026-11-04T09:00:00Z");
        assertThat(at.desk.build(customer, OCTOBER, NOVEMBER)).isEqualTo(id);
        rejected(() -> at.desk.build(customer, OCTOBER, NOVEMBER), "being built or sent");
        at.finish();
        KeptReport anew = at.report(id);
        assertThat(anew.state()).isEqualTo(ReportState.TO_REVIEW);
        assertThat(anew.remark()).isEqualTo("As discussed.");
        assertThat(anew.revision()).isEqualTo(1);
        assertThat(anew.prints().figures()).as("as of another moment").isNotEqualTo(before);
    }

    @Test
    void aPlanWithoutApprovalSendsUnread() {
        at.plans.save(
                customer,
                new PlanDraft(
                        false,
                        3,
                        6,
                        "Europe/London",
                        "en-GB",
                        PaperSize.A4,
                        List.of("owner@pebblegate.example", "OWNER@pebblegate.example", " "),
                        false,
                        false,
                        24));
        long id = at.built(customer);
        assertThat(at.report(id).state()).isEqualTo(ReportState.SENDING);
        assertThat(at.report(id).mails()).isEqualTo(new KeptReport.Mails(1, 0, 0, 0));
    }

    @Test
    void theDeskCountsAndLeadsFromOneToTheNext() {
        long second = at.customer("Saltmarsh Ferry Line", "Europe/Berlin");
        long third = at.customer("Tidewater Books", "Europe/Berlin");
        long first = at.built(customer);
        long last = at.built(third);
        DeskMonth month = at.desk.month(MONTH);
        assertThat(month.lines()).extracting(DeskLine::customerId).containsExactly(customer, second, third);
        assertThat(month.counts()).containsEntry(ReportState.TO_REVIEW, 2).containsEntry(ReportState.SENT, 0);
        assertThat(month.without()).isEqualTo(1);
        assertThat(at.desk.nextToReview(MONTH, OptionalLong.empty())).hasValue(first);
        assertThat(at.desk.nextToReview(MONTH, OptionalLong.of(first))).hasValue(last);
        assertThat(at.desk.nextToReview(MONTH, OptionalLong.of(last))).hasValue(first);
        at.desk.approve(first);
        assertThat(at.desk.nextToReview(MONTH, OptionalLong.of(last))).isEmpty();
    }

    /** The days are built in another order than that of time, which is that of pages. */
    @Test
    void reportsAreFoundByIdInPiecesOfTheSizeThatIsAskedFor() {
        CustomerScope everyone = CustomerScope.everyone();
        long october = at.built(customer);
        long september = at.desk.build(customer, OCTOBER.minusMonths(1), OCTOBER);
        long august = at.desk.build(customer, OCTOBER.minusMonths(2), OCTOBER.minusMonths(1));
        long others = at.built(at.customer("Saltmarsh Ferry Line", "Europe/Berlin"));
        ShelfSearch all = new ShelfSearch(OptionalLong.empty(), Optional.empty(), Optional.empty());
        assertThat(at.shelf.after(everyone, all, 0, 2))
                .extracting(KeptReport::id)
                .containsExactly(october, september);
        assertThat(at.shelf.after(everyone, all, september, 2))
                .extracting(KeptReport::id)
                .containsExactly(august, others);
        assertThat(at.shelf.after(everyone, all, others, 2)).isEmpty();
        ShelfSearch own = new ShelfSearch(OptionalLong.of(customer), Optional.empty(), Optional.empty());
        assertThat(at.shelf.after(everyone, own, october, 9))
                .extracting(KeptReport::id)
                .containsExactly(september, august);
        ShelfSearch ofAugust = new ShelfSearch(
                OptionalLong.empty(), Optional.of(MONTH.minusMonths(2)), Optional.of(ReportState.TO_REVIEW));
        assertThat(at.shelf.after(everyone, ofAugust, 0, 9))
                .extracting(KeptReport::id)
                .containsExactly(august);
        assertThat(at.shelf.search(everyone, all, 2, 3).items())
                .as("pages go by days")
                .extracting(KeptReport::id)
                .containsExactly(august);
    }

    @Test
    void aCustomerSeesItsOwnSentReportsOnly() {
        CustomerScope own = CustomerScope.of(customer);
        long id = at.built(customer);
        assertThat(at.shelf.find(own, id)).isEmpty();
        assertThat(at.shelf.pdf(own, id)).isEmpty();
        assertThat(at.shelf.pdf(CustomerScope.everyone(), id)).isPresent();
        ShelfSearch all = new ShelfSearch(OptionalLong.empty(), Optional.of(MONTH), Optional.empty());
        assertThat(at.shelf.search(own, all, 1, 20).total()).isZero();
        assertThat(at.shelf.after(own, all, 0, 20)).isEmpty();
        at.desk.approve(id);
        at.desk.send(id);
        at.finish();
        at.post(letter -> {}).step();
        assertThat(at.shelf.search(own, all, 1, 20).items())
                .extracting(KeptReport::id)
                .containsExactly(id);
        assertThat(at.shelf.after(own, all, 0, 20)).singleElement().satisfies(one -> {
            assertThat(one.id()).isEqualTo(id);
            assertThat(one.reviewedBy()).isEmpty();
        });
        assertThat(at.shelf.find(own, id).orElseThrow().reviewedBy()).isEmpty();
        assertThat(at.shelf.figures(own, id)).isPresent();
        CustomerScope other = CustomerScope.of(at.customer("Saltmarsh Ferry Line", "Europe/Berlin"));
        assertThat(at.shelf.search(other, all, 1, 20).items()).isEmpty();
        assertThat(at.shelf.after(other, all, 0, 20)).isEmpty();
        assertThat(at.shelf.json(other, id)).isEmpty();
        assertThat(at.shelf.look(other, id)).isEmpty();
        assertThat(at.shelf.revisions(other, id)).isEmpty();
    }
}
