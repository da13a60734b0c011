package org.roundsman.discovery;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.roundsman.discovery.recognise.Answer;
import org.roundsman.discovery.recognise.Group;
import org.roundsman.discovery.recognise.Grouping;
import org.roundsman.discovery.recognise.Known;
import org.roundsman.discovery.recognise.Recognition;
import org.roundsman.discovery.run.SweepRunner;
import org.roundsman.discovery.store.Finding;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.Site;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Outcome;

/** Lists what the latest sweep of a site found, held against the fleet as it is at that moment. */
@ApplicationScoped
@Transactional
public class Reviews {

    private final Desk desk;
    private final SweepRunner.Store store;
    private final FleetPicture fleet;

    @Inject
    Reviews(Desk desk, SweepBeans.Stored stored, FleetPicture fleet) {
        this.desk = desk;
        this.store = stored.store();
        this.fleet = fleet;
    }

    /**
     * The list; empty when the site was never swept.
     *
     * @throws InputRejected with a fault of {@code id} when the site is not there or lies outside the scope
     */
    public Optional<SweepReview> latest(CustomerScope scope, long siteId) {
        Site site = desk.site(scope, siteId);
        return store.sweeps().latest(siteId, 1).stream().findFirst().map(sweep -> review(site, sweep));
    }

    /** Keeps what was entered for lines of the latest sweep, to go on later. Lines that are not there are passed over. */
    public void keep(CustomerScope scope, long siteId, List<Review> entries) {
        Site site = desk.site(scope, siteId);
        store.sweeps().latest(site.id, 1).stream().findFirst().ifPresent(sweep -> store.findings()
                .keep(sweep.id(), entries));
    }

    private SweepReview review(Site site, Sweep sweep) {
        Set<String> aside = store.plans().asides(site.id).stream()
                .map(a -> a.host() + " " + a.port())
                .collect(Collectors.toSet());
        List<Finding> findings = store.findings().of(sweep.id()).stream()
                .filter(f -> !aside.contains(f.host() + " " + f.port()))
                .toList();
        List<Known> known = fleet.known(site.id, findings);
        List<Group> groups = Grouping.of(findings.stream()
                .filter(f -> f.outcome() == Outcome.ANSWERED)
                .map(Reviews::answer)
                .toList());
        groups = groups.stream()
                .map(group -> Preference.of(group, known, site.id))
                .toList();
        List<Decision> decisions = Recognition.decide(groups, known, site.id, site.customer.id);
        Lines lines = new Lines(fleet, site.id, findings, known);
        List<FoundDevice> found = lines.of(groups, decisions);
        return new SweepReview(
                sweep, found, Absent.of(sweep, found, known, store.sweeps().done(sweep.id()), site.id));
    }

    private static Answer answer(Finding finding) {
        Instant started = finding.uptimeSeconds().isPresent()
                ? finding.at().minus(Duration.ofMillis((long)
                        (1000 * finding.uptimeSeconds().getAsDouble())))
                : null;
        return new Answer(
                finding.id(),
                finding.host(),
                finding.port(),
                FleetPicture.said(finding.facts(), Fact.NAME),
                started,
                FleetPicture.identity(finding.facts()));
    }
}
