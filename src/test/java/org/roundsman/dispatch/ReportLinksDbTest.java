package org.roundsman.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.Base64;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.dispatch.ReportLinks.Fresh;
import org.roundsman.dispatch.ReportLinks.Link;
import org.roundsman.fleet.CustomerScope;

/** Links open the one report that they are for, as long as they are good. */
class ReportLinksDbTest {

    private DispatchFixture at;
    private ReportLinks links;
    private long customer;
    private long report;

    @BeforeEach
    void aReportThatWasSent() {
        at = DispatchFixture.on("report_links");
        links = new ReportLinks(at.parts);
        customer = at.customer("Pebblegate Dental", "Europe/London");
        at.plan(customer, "owner@pebblegate.example");
        report = at.sent(customer);
    }

    @Test
    void aLinkOpensTheVeryDocumentAndCounts() {
        Fresh fresh = links.make(report, 30);
        ReportLinks.Opened opened = links.open(fresh.secret()).orElseThrow();
        assertThat(opened.pdf())
                .isEqualTo(at.shelf.pdf(CustomerScope.everyone(), report).orElseThrow());
        assertThat(opened.fileName()).isEqualTo("report-2026-10-01-1.pdf");
        at.clock.forward(Duration.ofHours(1));
        links.open(fresh.secret());
        Link kept = links.of(report).get(0);
        assertThat(kept.opened()).isEqualTo(2);
        assertThat(kept.openedAt()).contains(at.clock.instant());
        assertThat(kept.madeBy()).isEqualTo("roundsman");
    }

    @Test
    void aSecretHas256BitsAndIsKeptNowhere() {
        Set<String> secrets = IntStream.range(0, 20)
                .mapToObj(i -> links.make(report, 1).secret())
                .collect(Collectors.toSet());
        assertThat(secrets).hasSize(20);
        assertThat(secrets)
                .allSatisfy(secret ->
                        assertThat(Base64.getUrlDecoder().decode(secret)).hasSize(32));
        String all = String.join(
                "\n",
                at.rows.list(
                        "select l::text from report_link l union all select e::text from audit_entry e",
                        row -> row.getString(1)));
        assertThat(secrets).noneMatch(all::contains);
        // FIPS 180-4, worked out by PostgreSQL
        assertThat(secrets).allSatisfy(secret -> assertThat(at.rows.number(
                        "select count(*) from report_link where hash = sha256(convert_to(?, 'UTF8'))", secret))
                .isEqualTo(1));
    }

    @Test
    void whatIsOverRevokedOrWrongOpensNothing() {
        Fresh over = links.make(report, 7);
        Fresh revoked = links.make(report, 90);
        Fresh good = links.make(report, 90);
        at.clock.forward(Duration.ofDays(7));
        assertThat(links.open(over.secret())).isEmpty();
        assertThat(over.link().good(at.clock.instant())).isFalse();
        links.revoke(revoked.link().id());
        assertThat(links.open(revoked.secret())).isEmpty();
        links.revoke(revoked.link().id());
        links.revoke(-1);
        String wrong =
                (good.secret().charAt(0) == 'A' ? "B" : "A") + good.secret().substring(1);
        assertThat(links.open(wrong)).isEmpty();
        assertThat(links.open("")).isEmpty();
        assertThat(links.open("' or 1 = 1 --")).isEmpty();
        assertThat(links.open(null)).isEmpty();
        assertThat(links.of(report)).extracting(Link::opened).containsOnly(0);
        assertThat(links.open(good.secret())).isPresent();
        assertThat(at.done(customer))
                .containsSubsequence("made a link to", "made a link to", "made a link to", "revoked a link to")
                .filteredOn("revoked a link to"::equals)
                .as("revoking twice is one change")
                .hasSize(1);
    }

    @Test
    void onlyWhatWasSentCanHaveALinkAndNotForever() {
        long other = at.customer("Saltmarsh Ferry Line", "Europe/Berlin");
        long unsent = at.built(other);
        assertThatThrownBy(() -> links.make(unsent, 30))
                .isInstanceOf(DeskRejected.class)
                .hasMessageContaining("Only a report that was sent");
        assertThatThrownBy(() -> links.make(report, 91)).isInstanceOf(DeskRejected.class);
        assertThatThrownBy(() -> links.make(report, 0)).isInstanceOf(DeskRejected.class);
        assertThat(links.of(unsent)).isEmpty();
    }

    @Test
    void aReportThatIsGoneIsNotOpened() {
        Fresh fresh = links.make(report, 30);
        at.rows.run("delete from report where id = ?", report);
        assertThat(links.open(fresh.secret())).isEmpty();
    }
}
