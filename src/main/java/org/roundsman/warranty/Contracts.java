package org.roundsman.warranty;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.AuditTrail.Note;
import org.roundsman.audit.FieldSet;
import org.roundsman.catalogue.WarrantyTerms.Service;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.warranty.store.ContractTable;
import org.roundsman.warranty.store.UnitTable;

/**
 * Extended contracts and the units they cover. Every change throws {@link InputRejected} with a fault of {@code id} when the
 * contract is not there or lies outside the scope.
 */
@ApplicationScoped
@Transactional
public class Contracts {

    /** So many serial numbers an audit entry names; of more it says how many. */
    private static final int MOST_NAMED = 100;

    private final ContractTable table;
    private final UnitTable units;
    private final Warranties warranties;
    private final AuditTrail audit;
    private final Event<CoverChanged> changed;

    @Inject
    Contracts(DataSource database, Warranties warranties, AuditTrail audit, Event<CoverChanged> changed) {
        this.table = new ContractTable(database);
        this.units = new UnitTable(database);
        this.warranties = warranties;
        this.audit = audit;
        this.changed = changed;
    }

    /**
     * What became of serial numbers that a contract was to cover.
     *
     * @param added how many it covers that it did not cover before
     * @param already how many it covered before
     * @param left those of units that left for good, with what became of them, such as {@code scrapped}; they were not taken
     * @param unknown those that no unit of the customer has; they were not taken
     */
    public record Covered(int added, int already, Map<String, String> left, List<String> unknown) {}

    /** Those in the scope; the one that ends last first. */
    public List<Contract> all(CustomerScope scope) {
        return table.all(scope.onlyCustomer());
    }

    /** Empty when there is none or it lies outside the scope. */
    public Optional<Contract> find(CustomerScope scope, long id) {
        return table.find(id).filter(one -> scope.includes(one.customerId()));
    }

    /** The contracts that cover a unit, or have or will; by first day. */
    public List<Contract> of(UnitCover cover) {
        return cover.serial().isEmpty() ? List.of() : table.ofUnit(cover.customerId(), cover.serial());
    }

    /** Serial numbers that a contract covers; none when it is not there or lies outside the scope. */
    public Set<String> serials(CustomerScope scope, long id) {
        return find(scope, id).map(one -> table.serials(one.id())).orElse(Set.of());
    }

    /**
     * What became of units that a contract covers and that left for good, such as {@code scrapped}, by serial number in lower
     * case; nothing when the contract is not there or lies outside the scope.
     */
    public Map<String, String> left(CustomerScope scope, long id) {
        return find(scope, id)
                .map(one -> left(one.customerId(), table.serials(one.id())))
                .orElse(Map.of());
    }

    private Map<String, String> left(long customerId, Collection<String> serials) {
        Set<String> wanted = serials.stream()
                .map(serial -> serial.strip().toLowerCase(Locale.ROOT))
                .collect(Collectors.toSet());
        Map<String, String> left = new HashMap<>();
        units.known(customerId, wanted).forEach((key, unit) -> {
            if (unit.gone()) {
                left.put(key.serial(), unit.fate());
            }
        });
        return left;
    }

    /**
     * @throws InputRejected naming each field that cannot be taken; {@code customer} when the customer is not there
     */
    public Contract add(CustomerScope scope, long customerId, ContractDraft draft) {
        Map<String, String> faults = new LinkedHashMap<>(draft.faults());
        if (!scope.includes(customerId) || !table.hasCustomer(customerId)) {
            faults.put("customer", "choose one of the customers");
        }
        refuse(faults);
        long id = table.taken(customerId, draft.number(), 0)
                ? 0
                : table.add(customerId, draft).orElse(0);
        if (id == 0) {
            throw taken();
        }
        Contract made = table.find(id).orElseThrow();
        audit.added(subject(made), fields(made));
        changed.fire(new CoverChanged());
        return made;
    }

    /**
     * @throws InputRejected naming each field that cannot be taken
     */
    public Contract change(CustomerScope scope, long id, ContractDraft draft) {
        Contract before = hold(scope, id);
        refuse(draft.faults());
        if (table.taken(before.customerId(), draft.number(), id)) {
            throw taken();
        }
        table.change(id, draft);
        Contract after = table.find(id).orElseThrow();
        audit.changed(subject(after), fields(before), fields(after));
        changed.fire(new CoverChanged());
        return after;
    }

    /** Removes it; its units lose the cover that it gave them. */
    public void remove(CustomerScope scope, long id) {
        Contract before = hold(scope, id);
        List<String> serials = List.copyOf(table.serials(id));
        table.remove(id);
        audit.note(List.of(new Note("removed", subject(before), List.of(named("units", serials, "")))));
        changed.fire(new CoverChanged());
    }

    /** Covers units of the contract's customer by their serial numbers, without regard to case. */
    public Covered cover(CustomerScope scope, long id, Collection<String> serials) {
        Contract contract = hold(scope, id);
        Map<String, String> known = new LinkedHashMap<>();
        for (UnitCover unit : warranties.all(CustomerScope.of(contract.customerId()))) {
            if (!unit.serial().isEmpty()) {
                known.put(unit.serial().toLowerCase(Locale.ROOT), unit.serial());
            }
        }
        Set<String> good = new LinkedHashSet<>();
        List<String> missing = new ArrayList<>();
        for (String serial : serials) {
            String found = known.get(serial.strip().toLowerCase(Locale.ROOT));
            if (found != null) {
                good.add(found);
            } else if (!serial.isBlank()) {
                missing.add(serial.strip());
            }
        }
        int added = table.cover(id, good);
        if (added > 0) {
            audit.note(List.of(
                    new Note("covered units", subject(contract), List.of(named("units", "", List.copyOf(good))))));
            changed.fire(new CoverChanged());
        }
        return told(contract, added, good.size() - added, missing);
    }

    private Covered told(Contract contract, int added, int already, List<String> missing) {
        Map<String, String> fates = missing.isEmpty() ? Map.of() : left(contract.customerId(), missing);
        Map<String, String> left = new LinkedHashMap<>();
        List<String> unknown = new ArrayList<>();
        for (String serial : missing) {
            String fate = fates.get(serial.toLowerCase(Locale.ROOT));
            if (fate == null) {
                unknown.add(serial);
            } else {
                left.put(serial, fate);
            }
        }
        return new Covered(added, already, left, unknown);
    }

    /** Covers all units of the customer that the search finds and that have a serial number. */
    public Covered cover(CustomerScope scope, long id, CoverSearch search) {
        Contract contract = hold(scope, id);
        List<UnitCover> found = search.of(warranties.all(CustomerScope.of(contract.customerId())));
        return cover(scope, id, found.stream().map(UnitCover::serial).toList());
    }

    /** Covers these no more; returns how many it did cover. */
    public int uncover(CustomerScope scope, long id, Collection<String> serials) {
        Contract contract = hold(scope, id);
        int gone = table.uncover(id, serials);
        if (gone > 0) {
            audit.note(List.of(new Note(
                    "covers units no more", subject(contract), List.of(named("units", List.copyOf(serials), "")))));
            changed.fire(new CoverChanged());
        }
        return gone;
    }

    private static FieldChange named(String field, List<String> old, String fresh) {
        return new FieldChange(field, listed(old), fresh);
    }

    private static FieldChange named(String field, String old, List<String> fresh) {
        return new FieldChange(field, old, listed(fresh));
    }

    private static String listed(List<String> serials) {
        String first = String.join(", ", serials.subList(0, Math.min(MOST_NAMED, serials.size())));
        return serials.size() > MOST_NAMED ? first + " and " + (serials.size() - MOST_NAMED) + " more" : first;
    }

    private Contract hold(CustomerScope scope, long id) {
        return table.hold(id)
                .filter(one -> scope.includes(one.customerId()))
                .orElseThrow(() -> new InputRejected(Map.of("id", "this contract is not there any more")));
    }

    private static void refuse(Map<String, String> faults) {
        if (!faults.isEmpty()) {
            throw new InputRejected(faults);
        }
    }

    private static InputRejected taken() {
        return new InputRejected(Map.of("number", "this customer has a contract of this number already"));
    }

    static Subject subject(Contract one) {
        return new Subject("contract", one.id(), one.number(), one.customerId());
    }

    private static FieldSet fields(Contract one) {
        return new FieldSet()
                .with("number", one.number())
                .with("customer", one.customer())
                .with("supplier", one.supplier())
                .with("service", one.service().map(Service::word).orElse(""))
                .with("first day", one.from())
                .with("last day", one.to())
                .with("note", one.note());
    }
}
