package org.roundsman.boot;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import org.roundsman.demo.DemoDevice;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.warranty.Contract;
import org.roundsman.warranty.ContractDraft;
import org.roundsman.warranty.Contracts;
import org.roundsman.warranty.Evidences;
import org.roundsman.warranty.Purchase;
import org.roundsman.warranty.Purchases;
import org.roundsman.warranty.UnitCover;
import org.roundsman.warranty.Warranties;

/**
 * Invents what was bought when, some contracts and a few invoices, so that the year ahead of the demonstration has a shape.
 * A customer of whom any purchase is known is left as it is.
 */
@ApplicationScoped
class DemoWarrantySowing {

    private static final CustomerScope ALL = CustomerScope.everyone();
    private static final int INVOICES = 3;

    private final Warranties warranties;
    private final Purchases purchases;
    private final Contracts contracts;
    private final Evidences evidences;
    private final DemoInvoices invoices;

    @Inject
    DemoWarrantySowing(
            Warranties warranties,
            Purchases purchases,
            Contracts contracts,
            Evidences evidences,
            DemoInvoices invoices) {
        this.warranties = warranties;
        this.purchases = purchases;
        this.contracts = contracts;
        this.evidences = evidences;
        this.invoices = invoices;
    }

    /** After the catalogue, which observes early. */
    void sown(@Observes DemoSown event) {
        Map<Long, DemoDevice> invented = new HashMap<>();
        event.fleet().devices().forEach(device -> {
            Long id = event.ids().get(device.number());
            if (id != null) {
                invented.put(id, device);
            }
        });
        List<UnitCover> units = warranties.all(ALL);
        Set<Long> known = units.stream()
                .filter(unit -> unit.unit().purchase().isPresent())
                .map(UnitCover::customerId)
                .collect(Collectors.toSet());
        Map<Long, List<UnitCover>> fresh = new LinkedHashMap<>();
        units.stream()
                .filter(unit -> !known.contains(unit.customerId()))
                .filter(unit -> invented.containsKey(unit.deviceId().orElse(0)))
                .forEach(unit -> fresh.computeIfAbsent(unit.customerId(), made -> new ArrayList<>())
                        .add(unit));
        DemoPurchases plan = new DemoPurchases(LocalDate.ofInstant(event.first(), ZoneOffset.UTC));
        int turn = 0;
        for (List<UnitCover> customer : fresh.values()) {
            int number = turn++;
            QuarkusTransaction.requiringNew().timeout(600).run(() -> sow(customer, invented, plan, number));
        }
    }

    private void sow(List<UnitCover> units, Map<Long, DemoDevice> invented, DemoPurchases plan, int turn) {
        List<Purchase> made = new ArrayList<>();
        for (UnitCover unit : units) {
            DemoDevice device = invented.get(unit.deviceId().orElseThrow());
            plan.of(device, unit)
                    .ifPresent(draft -> made.add(purchases.add(ALL, unit.customerId(), OptionalLong.empty(), draft)));
        }
        if (turn < INVOICES && !made.isEmpty()) {
            Purchase first = made.get(0);
            evidences.attach(ALL, first.id(), "invoice " + first.facts().invoiceNumber() + ".pdf", invoices.of(first));
        }
        plan.contract(turn).ifPresent(draft -> cover(units.get(0), made, draft));
    }

    /** The contract covers what stands at the site of the first unit. */
    private void cover(UnitCover first, List<Purchase> made, ContractDraft draft) {
        Contract contract = contracts.add(ALL, first.customerId(), draft);
        contracts.cover(
                ALL,
                contract.id(),
                made.stream()
                        .filter(one -> one.siteId().equals(first.siteId()))
                        .map(Purchase::serial)
                        .toList());
    }
}
