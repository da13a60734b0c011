package quiet;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import org.roundsman.audit.AuditTrail;
import org.roundsman.fleet.Customer;

/** Planted: a service of which some methods change what people edit and tell no audit. */
public final class QuietService {

    private final AuditTrail audit;

    public QuietService(AuditTrail audit) {
        this.audit = audit;
    }

    public void heard(Customer customer) {
        fill(customer);
        audit.did("changed", null);
    }

    public void unheardField(Customer customer) {
        fill(customer);
    }

    public void unheardRow() {
        new Customer().persist();
    }

    public void unheardStatement(PreparedStatement statement) throws SQLException {
        statement.executeBatch();
    }

    public String looks(Customer customer) {
        return customer.name;
    }

    private static void fill(Customer customer) {
        customer.name = "other";
    }
}
