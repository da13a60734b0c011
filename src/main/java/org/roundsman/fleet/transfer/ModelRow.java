package org.roundsman.fleet.transfer;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.LocalDate;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.ListPrice;
import org.roundsman.fleet.ModelBuild;
import org.roundsman.fleet.ModelDraft;
import org.roundsman.fleet.ModelEnds;
import org.roundsman.fleet.ModelEnds.Announced;
import org.roundsman.fleet.ModelTerms;

/** A model as a row of its table. */
final class ModelRow {

    /** All but the id, in the order in which {@link #fill} fills them. */
    static final String COLUMNS =
            "maker, name, kind, object_id, radios, streams, bands, antenna, outdoor, poe_class, mains, mount,"
                    + " list_price, currency, firmware_line_id, terms_kind, terms_from, terms_months, terms_service,"
                    + " end_of_sale, end_of_sale_source, end_of_software, end_of_software_source, end_of_support,"
                    + " end_of_support_source, note";

    private ModelRow() {}

    static ModelDraft read(ResultSet row) throws SQLException {
        String objectId = row.getString("object_id");
        return new ModelDraft(
                row.getString("maker"),
                row.getString("name"),
                DeviceKind.valueOf(row.getString("kind")),
                objectId == null ? "" : objectId,
                build(row),
                new ListPrice(row.getBigDecimal("list_price"), row.getString("currency")),
                row.getObject("firmware_line_id", Long.class),
                new ModelTerms(
                        row.getString("terms_kind"),
                        row.getString("terms_from"),
                        row.getObject("terms_months", Integer.class),
                        row.getString("terms_service")),
                new ModelEnds(
                        announced(row, "end_of_sale"),
                        announced(row, "end_of_software"),
                        announced(row, "end_of_support")),
                row.getString("note"));
    }

    private static ModelBuild build(ResultSet row) throws SQLException {
        return new ModelBuild(
                row.getInt("radios"),
                row.getObject("streams", Integer.class),
                row.getString("bands"),
                row.getString("antenna"),
                row.getBoolean("outdoor"),
                row.getObject("poe_class", Integer.class),
                row.getBoolean("mains"),
                row.getString("mount"));
    }

    private static Announced announced(ResultSet row, String column) throws SQLException {
        return new Announced(row.getObject(column, LocalDate.class), row.getString(column + "_source"));
    }

    /** Fills the parameters from the first on; returns the number of the next. */
    static int fill(PreparedStatement statement, ModelDraft draft) throws SQLException {
        ModelBuild build = draft.build();
        ModelTerms terms = draft.terms();
        Parameters at = new Parameters(statement);
        at.text(draft.maker());
        at.text(draft.name());
        at.text(draft.kind().name());
        at.object(draft.objectId().isEmpty() ? null : draft.objectId(), Types.VARCHAR);
        at.object(build.radios(), Types.SMALLINT);
        at.object(build.streams(), Types.SMALLINT);
        at.text(build.bands());
        at.text(build.antenna());
        at.object(build.outdoor(), Types.BOOLEAN);
        at.object(build.poeClass(), Types.SMALLINT);
        at.object(build.mains(), Types.BOOLEAN);
        at.text(build.mount());
        at.object(draft.price().amount(), Types.NUMERIC);
        at.text(draft.price().currency());
        at.object(draft.firmwareLineId(), Types.BIGINT);
        at.text(terms.kind());
        at.text(terms.from());
        at.object(terms.months(), Types.SMALLINT);
        at.text(terms.service());
        at.announced(draft.ends().sale());
        at.announced(draft.ends().software());
        at.announced(draft.ends().support());
        at.text(draft.note());
        return at.next;
    }

    /** Parameters of a statement, one after the other. */
    private static final class Parameters {
        private final PreparedStatement statement;
        private int next = 1;

        Parameters(PreparedStatement statement) {
            this.statement = statement;
        }

        void text(String value) throws SQLException {
            statement.setString(next++, value);
        }

        void object(Object value, int type) throws SQLException {
            statement.setObject(next++, value, type);
        }

        void announced(Announced one) throws SQLException {
            object(one.day(), Types.DATE);
            text(one.source());
        }
    }
}
