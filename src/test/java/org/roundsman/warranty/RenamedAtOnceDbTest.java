package org.roundsman.warranty;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.OptionalLong;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.PurchaseDraft;
import org.roundsman.web.FleetFixture;
import org.roundsman.web.MarkedPlaces;

/** Two people who give the same number to two things at the same time: the second is told so. */
@QuarkusTest
class RenamedAtOnceDbTest {

    private static final CustomerScope ALL = CustomerScope.everyone();
    private static final LocalDate DAY = LocalDate.of(2026, 1, 1);

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Inject
    Purchases purchases;

    @Inject
    Contracts contracts;

    private static PurchaseDraft bought(String serial) {
        return new PurchaseDraft(serial, null, null, "", "", "", DAY, null, null, null, "", "");
    }

    private static ContractDraft contract(String number) {
        return new ContractDraft(number, "", "", DAY, DAY.plusYears(1), "");
    }

    /** Does the first work, begins the second, which has to wait, and lets the first end; what the second was told. */
    private String second(Runnable first, Runnable second) throws Exception {
        CompletableFuture<String> told = new CompletableFuture<>();
        QuarkusTransaction.requiringNew().run(() -> {
            first.run();
            new Thread(() -> told.complete(outcome(second))).start();
            Awaitility.await().until(() -> places.number("select count(*) from pg_locks where not granted") > 0);
        });
        return told.get(30, TimeUnit.SECONDS);
    }

    private static String outcome(Runnable work) {
        try {
            work.run();
            return "taken";
        } catch (InputRejected e) {
            return e.faults().keySet().toString();
        } catch (RuntimeException e) {
            return e.toString();
        }
    }

    @Test
    void theSecondPurchaseOfASerialNumberIsRefused() throws Exception {
        long customer = fixture.place("Saltmarsh").customerId();
        OptionalLong none = OptionalLong.empty();
        long one = purchases.add(ALL, customer, none, bought("ONE")).id();
        long two = purchases.add(ALL, customer, none, bought("TWO")).id();
        assertThat(second(
                        () -> purchases.change(ALL, one, none, bought("SAME")),
                        () -> purchases.change(ALL, two, none, bought("same"))))
                .isEqualTo("[serial]");
    }

    @Test
    void theSecondContractOfANumberIsRefused() throws Exception {
        long customer = fixture.place("Saltmarsh").customerId();
        long one = contracts.add(ALL, customer, contract("C-1")).id();
        long two = contracts.add(ALL, customer, contract("C-2")).id();
        assertThat(second(
                        () -> contracts.change(ALL, one, contract("C-3")),
                        () -> contracts.change(ALL, two, contract("c-3"))))
                .isEqualTo("[number]");
    }
}
