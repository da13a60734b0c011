package org.roundsman.web.onboarding;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.FleetImport;
import org.roundsman.fleet.ImportUnreadable;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.Sites;
import org.roundsman.fleet.TransferTable;
import org.roundsman.web.page.Visitor;

/** What the first page of the area shows. */
@ApplicationScoped
class Landing {

    private static final int LATEST = 4;

    private final Customers customers;
    private final Sites sites;
    private final FleetImport imports;
    private final Clock clock;

    Landing(Customers customers, Sites sites, FleetImport imports, Clock clock) {
        this.customers = customers;
        this.sites = sites;
        this.imports = imports;
        this.clock = clock;
    }

    /** A customer with its sites. */
    record WithSites(Customer customer, List<Site> sites) {}

    /** An import of the last day. */
    record ImportLine(long id, String files, String when, String state) {}

    /**
     * The page.
     *
     * @param faults what was wrong with the files just sent
     * @param windows whether files that are not UTF-8 were said to be Windows-1252
     */
    record View(
            List<Customer> customers,
            List<WithSites> latest,
            List<ImportLine> imports,
            List<TransferTable> tables,
            List<ImportUnreadable.Fault> faults,
            boolean windows) {}

    View view(Visitor visitor, List<ImportUnreadable.Fault> faults, boolean windows) {
        List<Customer> all = customers.all(visitor.scope());
        List<WithSites> latest = all.stream()
                .sorted(Comparator.comparing((Customer c) -> c.createdAt).reversed())
                .limit(LATEST)
                .map(c -> new WithSites(c, sites.all(visitor.scope(), c.id)))
                .toList();
        List<ImportLine> lines = imports.latest(visitor.person().accountId()).stream()
                .map(run -> new ImportLine(
                        run.id(), RunView.names(run), RunView.ago(run, clock.instant()), RunView.state(run)))
                .toList();
        return new View(all, latest, lines, Arrays.asList(TransferTable.values()), faults, windows);
    }
}
