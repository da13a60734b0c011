package org.roundsman.fleet;

import io.quarkus.panache.common.Parameters;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Optional;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;

/** Reads and changes customers. */
@ApplicationScoped
@Transactional
public class Customers {

    private final AuditTrail audit;
    private final Event<FleetChanged> changed;

    @Inject
    Customers(AuditTrail audit, Event<FleetChanged> changed) {
        this.audit = audit;
        this.changed = changed;
    }

    /** Those in the scope, by name. */
    public List<Customer> all(CustomerScope scope) {
        return Customer.list(
                "(:only is null or id = :only) order by lower(name)", Parameters.with("only", scope.onlyCustomer()));
    }

    /** Empty when there is none or it lies outside the scope. */
    public Optional<Customer> find(CustomerScope scope, long id) {
        return scope.includes(id) ? Customer.findByIdOptional(id) : Optional.empty();
    }

    /**
     * @throws InputRejected naming each field that cannot be taken
     */
    public Customer add(CustomerDraft draft) {
        Customer customer = new Customer();
        fill(customer, draft);
        customer.persist();
        audit.added(FleetFields.subject(customer), FleetFields.of(customer));
        changed.fire(new FleetChanged());
        return customer;
    }

    /**
     * @throws InputRejected naming each field that cannot be taken
     */
    public Customer change(long id, CustomerDraft draft) {
        Customer customer = Customer.<Customer>findByIdOptional(id).orElseThrow(() -> gone(id));
        FieldSet before = FleetFields.of(customer);
        fill(customer, draft);
        audit.changed(FleetFields.subject(customer), before, FleetFields.of(customer));
        changed.fire(new FleetChanged());
        return customer;
    }

    private static void fill(Customer customer, CustomerDraft draft) {
        InputCheck check = new InputCheck();
        draft.check(check);
        check.done();
        String name = draft.name().strip();
        boolean taken = Customer.count("lower(name) = lower(?1) and (?2 is null or id <> ?2)", name, customer.id) > 0;
        check.that("name", !taken, "there is a customer of this name already");
        check.done();
        customer.name = name;
        customer.note = draft.note().strip();
    }

    private static InputRejected gone(long id) {
        return new InputRejected(java.util.Map.of("id", "customer " + id + " is not there any more"));
    }
}
