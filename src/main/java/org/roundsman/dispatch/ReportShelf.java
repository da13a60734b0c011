package org.roundsman.dispatch;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import org.roundsman.dispatch.store.ShelfTable;
import org.roundsman.dispatch.work.Looks;
import org.roundsman.dispatch.work.Parts;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportLook;
import org.roundsman.shared.Page;
import org.roundsman.system.Rows;

/**
 * The archive. A scope of one customer sees its own reports only, and of these only those that were sent. Blocks on the database
 * and, for a PDF that is not settled yet, for as long as it takes to make one.
 */
@ApplicationScoped
public class ReportShelf {

    private final Parts parts;

    @Inject
    ReportShelf(Parts parts) {
        this.parts = parts;
    }

    /** Empty when there is none, or the scope does not see it. */
    public Optional<KeptReport> find(CustomerScope scope, long id) {
        return table().find(scope.onlyCustomer(), id).map(report -> seen(scope, report));
    }

    /** What it says; empty before it is built. */
    public Optional<Report> figures(CustomerScope scope, long id) {
        return json(scope, id).map(parts.making()::read);
    }

    /** The same as it is stored. */
    public Optional<byte[]> json(CustomerScope scope, long id) {
        return find(scope, id).flatMap(report -> table().figures(id)).map(ShelfTable.Figures::json);
    }

    /** The PDF that was settled; before that, one that is made now of what is there. Empty before it is built. */
    public Optional<byte[]> pdf(CustomerScope scope, long id) {
        Optional<KeptReport> report = find(scope, id);
        if (report.isEmpty()) {
            return Optional.empty();
        }
        Optional<byte[]> settled = table().print(id).map(ShelfTable.Print::pdf);
        return settled.isPresent()
                ? settled
                : figures(scope, id).map(figures -> parts.making().pdf(figures, look(report.get())));
    }

    /** How it looks: as settled when it was set on its way, before that by what is there now. */
    public Optional<ReportLook> look(CustomerScope scope, long id) {
        return find(scope, id).map(this::look);
    }

    private ReportLook look(KeptReport report) {
        return new Looks(parts.store().rows()).of(report, parts.now());
    }

    /** All revisions of the days of that one, the newest first. */
    public List<KeptReport> revisions(CustomerScope scope, long id) {
        return find(scope, id)
                .map(one -> table().revisions(scope.onlyCustomer(), one.customerId(), one.from(), one.to()).stream()
                        .map(report -> seen(scope, report))
                        .toList())
                .orElse(List.of());
    }

    /**
     * One page, the newest days first, then by customer.
     *
     * @param number of the page, from 1
     * @param size of a page, at least 1
     */
    public Page<KeptReport> search(CustomerScope scope, ShelfSearch search, int number, int size) {
        List<KeptReport> found = table().search(scope.onlyCustomer(), search, number, size).stream()
                .map(report -> seen(scope, report))
                .toList();
        return new Page<>(found, number, size, table().count(scope.onlyCustomer(), search));
    }

    /** Those with an id above that one, by id. @param most so many at most, at least 1 */
    public List<KeptReport> after(CustomerScope scope, ShelfSearch search, long id, int most) {
        return table().after(scope.onlyCustomer(), search, id, most).stream()
                .map(report -> seen(scope, report))
                .toList();
    }

    private static KeptReport seen(CustomerScope scope, KeptReport report) {
        return scope.onlyCustomer() == null ? report : report.forCustomer();
    }

    private ShelfTable table() {
        Rows rows = parts.store().rows();
        return new ShelfTable(rows);
    }
}
