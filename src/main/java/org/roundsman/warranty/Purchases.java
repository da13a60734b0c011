package org.roundsman.warranty;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.AuditTrail.Note;
import org.roundsman.audit.FieldSet;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.PurchaseDraft;
import org.roundsman.warranty.store.ContractTable;
import org.roundsman.warranty.store.PurchaseTable;

/** Enters and changes what was bought, one piece at a time; the import does the same for many. */
@ApplicationScoped
@Transactional
public class Purchases {

    private final PurchaseTable table;
    private final ContractTable contracts;
    private final AuditTrail audit;
    private final Event<CoverChanged> changed;
    private final Clock clock;

    @Inject
    Purchases(DataSource database, AuditTrail audit, Event<CoverChanged> changed, Clock clock) {
        this.table = new PurchaseTable(database);
        this.contracts = new ContractTable(database);
        this.audit = audit;
        this.changed = changed;
        this.clock = clock;
    }

    /** Empty when there is none or it lies outside the scope. */
    public Optional<Purchase> find(CustomerScope scope, long id) {
        return table.find(id).filter(one -> scope.includes(one.customerId()));
    }

    /**
     * Enters a purchase of a customer.
     *
     * @param modelId what it is, where no device tells; empty where not known
     * @throws InputRejected naming each field that cannot be taken; {@code id} when the customer is not there
     */
    public Purchase add(CustomerScope scope, long customerId, OptionalLong modelId, PurchaseDraft draft) {
        if (!scope.includes(customerId) || table.customer(customerId).isEmpty()) {
            throw new InputRejected(Map.of("id", "this customer is not there"));
        }
        PurchaseDraft facts = stripped(draft);
        check(customerId, modelId, facts, 0);
        long id = table.add(customerId, orNull(modelId), facts).orElseThrow(Purchases::taken);
        Purchase made = table.find(id).orElseThrow();
        audit.added(subject(made), fields(made));
        changed.fire(new CoverChanged());
        return made;
    }

    /**
     * Changes it. Contracts that cover its serial number go with it when that is corrected.
     *
     * @throws InputRejected naming each field that cannot be taken; {@code id} when it is not there
     */
    public Purchase change(CustomerScope scope, long id, OptionalLong modelId, PurchaseDraft draft) {
        Purchase before = table.hold(id)
                .filter(one -> scope.includes(one.customerId()))
                .orElseThrow(() -> new InputRejected(Map.of("id", "this purchase is not there any more")));
        PurchaseDraft facts = stripped(draft);
        check(before.customerId(), modelId, facts, id);
        table.change(id, orNull(modelId), facts);
        Purchase after = table.find(id).orElseThrow();
        audit.changed(subject(after), fields(before), fields(after));
        keepContracts(before, after);
        changed.fire(new CoverChanged());
        return after;
    }

    private void keepContracts(Purchase before, Purchase after) {
        if (before.serial().equals(after.serial())) {
            return;
        }
        List<FieldChange> renamed = List.of(new FieldChange("units", before.serial(), after.serial()));
        List<Note> notes = contracts.rename(before.customerId(), before.serial(), after.serial()).stream()
                .map(one -> new Note("changed", Contracts.subject(one), renamed))
                .toList();
        if (!notes.isEmpty()) {
            audit.note(notes);
        }
    }

    private static PurchaseDraft stripped(PurchaseDraft draft) {
        return new PurchaseDraft(
                draft.serial().strip(),
                draft.siteId(),
                draft.deviceId(),
                draft.supplier().strip(),
                draft.orderNumber().strip(),
                draft.invoiceNumber().strip(),
                draft.boughtOn(),
                draft.deliveredOn(),
                draft.installedOn(),
                PurchaseDraft.usual(draft.price(), draft.currency()),
                draft.currency(),
                draft.note().strip());
    }

    private void check(long customerId, OptionalLong modelId, PurchaseDraft draft, long id) {
        Map<String, String> faults =
                new LinkedHashMap<>(draft.faults(LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC)));
        if (draft.siteId() != null && !table.ownsSite(customerId, draft.siteId())) {
            faults.put("siteId", "this site is not there, or not of this customer");
        }
        if (draft.deviceId() != null) {
            OptionalLong site = table.siteOf(customerId, draft.deviceId());
            if (site.isEmpty()) {
                faults.put("deviceId", "this device is not there, or not of this customer");
            } else if (draft.siteId() == null || site.getAsLong() != draft.siteId()) {
                faults.put("deviceId", "this device is at another site");
            }
        }
        if (modelId.isPresent() && !table.hasModel(modelId.getAsLong())) {
            faults.put("model", "this model is not there any more");
        }
        if (faults.isEmpty() && table.taken(customerId, draft.serial(), id)) {
            throw taken();
        }
        if (!faults.isEmpty()) {
            throw new InputRejected(faults);
        }
    }

    private static InputRejected taken() {
        return new InputRejected(
                Map.of("serial", "this customer has a purchase of this serial number already; change that one"));
    }

    private static Long orNull(OptionalLong id) {
        return id.isPresent() ? id.getAsLong() : null;
    }

    static Subject subject(Purchase one) {
        return new Subject("purchase", one.id(), one.serial(), one.customerId());
    }

    /** Fields are called as after an import. */
    private static FieldSet fields(Purchase one) {
        PurchaseDraft facts = one.facts();
        return new FieldSet()
                .with("customer", one.customer())
                .with("serial", facts.serial())
                .with("site", one.site())
                .with("device", one.device())
                .with("model", one.modelId().isPresent() ? one.modelId().getAsLong() : "")
                .with("supplier", facts.supplier())
                .with("order number", facts.orderNumber())
                .with("invoice number", facts.invoiceNumber())
                .with("bought on", facts.boughtOn())
                .with("delivered on", facts.deliveredOn())
                .with("installed on", facts.installedOn())
                .with("price", facts.price() == null ? "" : facts.price().toPlainString())
                .with("currency", facts.currency())
                .with("note", facts.note());
    }
}
