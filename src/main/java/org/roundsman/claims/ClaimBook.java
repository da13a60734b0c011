package org.roundsman.claims;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.claims.store.ClaimTable;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.shared.Page;

/** Answers questions about claims. Thread-safe. */
@ApplicationScoped
public class ClaimBook {

    private static final int MOST = 20;

    private final ClaimTable table;

    @Inject
    ClaimBook(DataSource database) {
        this.table = new ClaimTable(database);
    }

    /** Empty when there is none or it lies outside the scope. */
    public Optional<Claim> find(CustomerScope scope, long id) {
        return table.find(scope.onlyCustomer(), id);
    }

    /** One page: those that are not closed first, of them the oldest first; then the closed ones, the newest first. */
    public Page<Claim> search(CustomerScope scope, ClaimSearch search) {
        return table.search(scope.onlyCustomer(), search);
    }

    /** By id, those after that id, at most so many. */
    public List<Claim> after(CustomerScope scope, Optional<ClaimState> state, long id, int most) {
        return table.after(scope.onlyCustomer(), state, id, most);
    }

    /** About units at a place, those that are not closed first. */
    public List<Claim> ofDevice(CustomerScope scope, long deviceId) {
        return table.ofDevice(deviceId, MOST).stream()
                .filter(claim -> scope.includes(claim.customerId()))
                .toList();
    }

    /** What happened to a claim, the newest first; nothing when it lies outside the scope. */
    public List<ClaimChange> changes(CustomerScope scope, long id) {
        return find(scope, id).map(claim -> table.changes(claim.id())).orElse(List.of());
    }
}
