package org.roundsman.discovery;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.discovery.run.SweepRunner;
import org.roundsman.discovery.store.SweepTable;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.Site;
import org.roundsman.measure.Outcome;

/**
 * Plans, starts, watches, cancels and resumes the sweeps of sites. Every method takes the scope of who asks, and throws
 * {@link InputRejected} with a fault of {@code id} when the site is not there or lies outside of it.
 */
@ApplicationScoped
@Transactional
public class Sweeps {

    private final Desk desk;
    private final SweepRunner.Store store;
    private final SiteKeys keys;
    private final SweepBeans runs;
    private final Event<SweepsChanged> changed;

    @Inject
    Sweeps(Desk desk, SweepBeans.Stored stored, SiteKeys keys, SweepBeans runs, Event<SweepsChanged> changed) {
        this.desk = desk;
        this.store = stored.store();
        this.keys = keys;
        this.runs = runs;
        this.changed = changed;
    }

    /** What is entered for the site. */
    public SweepPlan plan(CustomerScope scope, long siteId) {
        return store.plans().of(desk.site(scope, siteId).id);
    }

    /** The credentials that sweeps of the site may try, in the order in which they are tried; no secrets. */
    public List<Credential> credentials(CustomerScope scope, long siteId) {
        return keys.usableAt(desk.site(scope, siteId));
    }

    /**
     * Keeps what is entered for the site.
     *
     * @throws InputRejected naming ranges, ports or credentials that cannot be taken
     */
    public void save(CustomerScope scope, long siteId, SweepPlan plan) {
        Site site = desk.site(scope, siteId);
        PlanCheck.check(plan, keys.usableAt(site));
        SweepPlan before = store.plans().of(siteId);
        store.plans().save(siteId, plan);
        desk.audit().changed(subject("sweep plan", site), PlanCheck.fields(before), PlanCheck.fields(plan));
    }

    /**
     * Starts a sweep of what is entered; what an earlier one found and nobody adopted is forgotten.
     *
     * @throws InputRejected when one is running, or what is entered does not do
     */
    public Sweep start(CustomerScope scope, long siteId) {
        Site site = desk.site(scope, siteId);
        SweepPlan plan = store.plans().of(siteId);
        int total = PlanCheck.check(plan, keys.usableAt(site));
        Sweep fresh = new Sweep(
                0,
                siteId,
                SweepState.RUNNING,
                plan.ranges(),
                plan.ports(),
                keys.chosen(site, plan).stream().map(c -> c.id).toList(),
                total,
                desk.audit().actor().name(),
                desk.now(),
                Optional.empty(),
                "");
        long id = store.sweeps().add(fresh).orElseThrow(Sweeps::second);
        note("started", site);
        return store.sweeps().find(id).orElseThrow();
    }

    private static InputRejected second() {
        return new InputRejected(Map.of("", "a sweep of this site is running already; cancel it or wait for its end"));
    }

    /** How far the latest sweep of the site is; empty when there was none. */
    public Optional<SweepProgress> progress(CustomerScope scope, long siteId) {
        return store.sweeps().latest(desk.site(scope, siteId).id, 1).stream()
                .findFirst()
                .map(this::progress);
    }

    private SweepProgress progress(Sweep sweep) {
        Map<Integer, Integer> counts = store.sweeps().counts(sweep.id());
        int leftOut = counts.getOrDefault(SweepTable.LEFT_OUT, 0);
        int answered = counts.getOrDefault(Outcome.ANSWERED.code(), 0);
        int closed = counts.getOrDefault(Outcome.PORT_CLOSED.code(), 0);
        int refused = 0;
        int asked = 0;
        for (Map.Entry<Integer, Integer> count : counts.entrySet()) {
            asked += count.getValue();
            boolean is = count.getKey() >= 0 && Outcome.ofCode(count.getKey()).kind() == Outcome.Kind.REFUSED;
            refused += is ? count.getValue() : 0;
        }
        int silent = asked - leftOut - answered - closed - refused;
        boolean waiting = sweep.isRunning() && !runs.hasBegun(sweep.id());
        return new SweepProgress(sweep, asked, answered, refused, closed, silent, leftOut, waiting);
    }

    /** The latest sweeps of the site, newest first. */
    public List<Sweep> latest(CustomerScope scope, long siteId, int most) {
        return store.sweeps().latest(desk.site(scope, siteId).id, most);
    }

    /** Cancels the sweep that is running at the site; what it found stays. Nothing happens when none is. */
    public void cancel(CustomerScope scope, long siteId) {
        Site site = desk.site(scope, siteId);
        turn(site, SweepState.RUNNING, SweepState.CANCELLED, "cancelled");
    }

    /** Goes on with the latest sweep where it was cancelled. Nothing happens when it was not. */
    public void resume(CustomerScope scope, long siteId) {
        Site site = desk.site(scope, siteId);
        turn(site, SweepState.CANCELLED, SweepState.RUNNING, "resumed");
    }

    private void turn(Site site, SweepState from, SweepState to, String action) {
        store.sweeps().latest(site.id, 1).stream().findFirst().ifPresent(sweep -> {
            if (store.sweeps().turn(sweep.id(), from, to, desk.now())) {
                note(action, site);
            }
        });
    }

    private void note(String action, Site site) {
        desk.audit().did(action, subject("sweep", site));
        changed.fire(new SweepsChanged());
    }

    /** What was set aside as not ours at the site. */
    public List<Aside> asides(CustomerScope scope, long siteId) {
        return store.plans().asides(desk.site(scope, siteId).id);
    }

    /** Sets an address aside: sweeps of the site leave it out, and the list does not show it. */
    public void setAside(CustomerScope scope, long siteId, String host, int port) {
        Site site = desk.site(scope, siteId);
        store.plans().setAside(siteId, host, port, desk.audit().actor().name(), desk.now());
        desk.audit().did("set aside", address(site, host, port));
    }

    /** Takes an address back that was set aside: the next sweep asks it again. */
    public void takeBack(CustomerScope scope, long siteId, String host, int port) {
        Site site = desk.site(scope, siteId);
        if (store.plans().takeBack(siteId, host, port)) {
            desk.audit().did("taken back", address(site, host, port));
        }
    }

    private static Subject subject(String kind, Site site) {
        return new Subject(kind, site.id, site.name, site.customer.id);
    }

    private static Subject address(Site site, String host, int port) {
        return new Subject("sweep address", site.id, host + " port " + port + " at " + site.name, site.customer.id);
    }
}
