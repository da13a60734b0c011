package org.roundsman.rules;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.rules.store.TargetTable;

/** Finds customers, sites, models and devices that values can be set for. Thread-safe. */
@ApplicationScoped
public class RuleTargets {

    private final TargetTable table;

    @Inject
    RuleTargets(TargetTable table) {
        this.table = table;
    }

    /**
     * Something that values can be set for.
     *
     * @param name with what it belongs to
     */
    public record Found(RuleLevel level, long id, String name) {}

    /** Those in whose names every word occurs, at most so many; models only for those who see everybody. */
    public List<Found> search(CustomerScope scope, String words, int most) {
        return table.search(words, scope.onlyCustomer(), most);
    }

    /** One of them; empty when it is not there or lies outside the scope. */
    public Optional<Found> find(CustomerScope scope, RuleLevel level, long id) {
        if (level == RuleLevel.ALL) {
            return scope.onlyCustomer() == null ? Optional.of(new Found(level, 0, "")) : Optional.empty();
        }
        return table.find(level, id, scope.onlyCustomer());
    }

    /** What rules are applied to when they look at that device; empty when it is not there or lies outside the scope. */
    public Optional<RuleTarget> ofDevice(CustomerScope scope, long deviceId) {
        return table.device(deviceId).filter(target -> scope.includes(target.customerId()));
    }

    /** What a rule looks at that is set there: a device has a site, a site has a customer. */
    public Optional<RuleTarget> below(CustomerScope scope, RuleLevel level, long id) {
        return switch (level) {
            case ALL -> Optional.of(RuleTarget.service());
            case MODEL -> Optional.of(new RuleTarget(0, 0, id, 0));
            case CUSTOMER -> Optional.of(RuleTarget.site(id, 0)).filter(target -> scope.includes(id));
            case SITE ->
                table.customerOfSite(id).filter(scope::includes).map(customer -> RuleTarget.site(customer, id));
            case DEVICE -> ofDevice(scope, id);
        };
    }
}
