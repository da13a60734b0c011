package org.roundsman.warranty.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Optional;
import org.roundsman.catalogue.WarrantyTerms.Service;
import org.roundsman.system.Rows;

/** What the tables of warranty have that others do not. */
final class Columns {

    private Columns() {}

    /** Makes others wait who do the same for that customer, until the transaction of this thread ends. */
    static void holdCustomer(Rows rows, long id) {
        rows.list("select id from customer where id = ? for no key update", row -> 0, id);
    }

    /** As a parameter; null, for no bound, stays null. */
    static Long[] ids(Collection<Long> ids) {
        return ids == null ? null : ids.toArray(Long[]::new);
    }

    static Long idOrNull(ResultSet row, String column) throws SQLException {
        long id = row.getLong(column);
        return row.wasNull() ? null : id;
    }

    /** Null where there is none. */
    static LocalDate day(ResultSet row, String column) throws SQLException {
        return row.getObject(column, LocalDate.class);
    }

    static Optional<Service> service(ResultSet row, String column) throws SQLException {
        String word = row.getString(column);
        return word.isEmpty() ? Optional.empty() : Optional.of(Service.valueOf(word));
    }
}
