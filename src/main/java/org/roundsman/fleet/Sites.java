package org.roundsman.fleet;

import io.quarkus.panache.common.Parameters;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;

/** Reads and changes sites. What it returns has its customer, hours and contacts loaded. */
@ApplicationScoped
@Transactional
public class Sites {

    private static final String WHOLE = "from Site s join fetch s.customer c";

    private final AuditTrail audit;
    private final Event<FleetChanged> changed;

    @Inject
    Sites(AuditTrail audit, Event<FleetChanged> changed) {
        this.audit = audit;
        this.changed = changed;
    }

    /** Those in the scope, of one customer or (null) of all, by customer and name. */
    public List<Site> all(CustomerScope scope, Long customerId) {
        List<Site> sites = Site.list(
                WHOLE + " where (:only is null or c.id = :only) and (:of is null or c.id = :of)"
                        + " order by lower(c.name), lower(s.name)",
                Parameters.with("only", scope.onlyCustomer()).and("of", customerId));
        return sites;
    }

    /** Empty when there is none or it lies outside the scope. */
    public Optional<Site> find(CustomerScope scope, long id) {
        Optional<Site> site = Site.<Site>find(WHOLE + " where s.id = ?1", id)
                .firstResultOptional()
                .filter(s -> scope.includes(s.customer.id));
        site.ifPresent(s -> {
            s.hours.size();
            s.contacts.size();
        });
        return site;
    }

    /**
     * @throws InputRejected naming each field that cannot be taken
     */
    public Site add(long customerId, SiteDraft draft) {
        Site site = new Site();
        site.customer = Customer.<Customer>findByIdOptional(customerId)
                .orElseThrow(() -> new InputRejected(Map.of("customerId", "this customer is not there any more")));
        fill(site, draft);
        site.persist();
        audit.added(FleetFields.subject(site), FleetFields.of(site));
        changed.fire(new FleetChanged());
        return site;
    }

    /**
     * @throws InputRejected naming each field that cannot be taken
     */
    public Site change(long id, SiteDraft draft) {
        Site site = Site.<Site>findByIdOptional(id)
                .orElseThrow(() -> new InputRejected(Map.of("id", "this site is not there any more")));
        FieldSet before = FleetFields.of(site);
        fill(site, draft);
        audit.changed(FleetFields.subject(site), before, FleetFields.of(site));
        changed.fire(new FleetChanged());
        return site;
    }

    private static void fill(Site site, SiteDraft draft) {
        InputCheck check = new InputCheck();
        draft.check(check);
        check.done();
        String name = draft.name().strip();
        boolean taken = Site.count(
                        "customer = ?1 and lower(name) = lower(?2) and (?3 is null or id <> ?3)",
                        site.customer,
                        name,
                        site.id)
                > 0;
        check.that("name", !taken, "this customer has a site of this name already");
        check.done();
        site.name = name;
        site.timeZone = draft.timeZone();
        site.street = draft.street().strip();
        site.postcode = draft.postcode().strip();
        site.town = draft.town().strip();
        site.country = draft.country();
        site.accessNote = draft.accessNote().strip();
        site.uplinkDownKbit = draft.uplinkDownKbit();
        site.uplinkUpKbit = draft.uplinkUpKbit();
        if (draft.availabilityTarget() != null) {
            site.availabilityTarget = draft.availabilityTarget();
        }
        site.hours.clear();
        site.hours.addAll(draft.hours());
        site.contacts.clear();
        site.contacts.addAll(draft.contacts());
    }
}
