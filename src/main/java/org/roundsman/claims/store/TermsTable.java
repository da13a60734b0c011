package org.roundsman.claims.store;

import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.catalogue.WarrantyTerms;
import org.roundsman.system.Rows;

/** The terms with which models are sold. */
public final class TermsTable {

    private final Rows rows;

    public TermsTable(DataSource database) {
        this.rows = new Rows(database, "units, claims or spares");
    }

    /** Empty where none are entered. */
    public Optional<WarrantyTerms> of(long model) {
        return rows.one(
                        "select terms_kind, terms_from, terms_months, terms_service from model where id = ?",
                        row -> {
                            short months = row.getShort("terms_months");
                            Short given = row.wasNull() ? null : Short.valueOf(months);
                            return WarrantyTerms.of(
                                    row.getString("terms_kind"),
                                    row.getString("terms_from"),
                                    given,
                                    row.getString("terms_service"));
                        },
                        model)
                .flatMap(terms -> terms);
    }
}
