package org.roundsman.warranty.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.ZoneId;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.catalogue.WarrantyTerms;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.system.Rows;
import org.roundsman.warranty.KnownUnit;
import org.roundsman.warranty.Unit;
import org.roundsman.warranty.UnitModel;
import org.roundsman.warranty.store.ContractTable.Key;

/** Devices as far as their cover asks, and the models that are promised something. */
public final class UnitTable {

    private static final String DEVICES = """
            select d.id as device_id, d.kind, d.name, d.place, d.model_id, s.id as site_id, s.name as site, s.time_zone,
                c.id as customer_id, c.name as customer, coalesce(f.value, '') as serial, f.since
            from device d
            join site s on s.id = d.site_id
            join customer c on c.id = s.customer_id
            left join device_fact f on f.device_id = d.id and f.fact = 'SERIAL'
            where (?::bigint is null or c.id = ?) and (?::bigint[] is null or d.id = any(?))
            order by lower(c.name), lower(s.name), lower(d.name), d.id
            """;

    /** A stay that was only entered or announced is no reading. */
    private static final String KNOWN = """
            select u.customer_id, u.serial, u.model_id, u.fate, u.fate_since, t.first_read
            from unit u
            left join (
                select unit_id, min(from_at) as first_read
                from unit_stay where standing in ('READ', 'CONFIRMED') group by unit_id) t on t.unit_id = u.id
            where u.customer_id is not null and (?::bigint is null or coalesce(u.customer_id, 0) = ?)
                and (?::text[] is null or lower(u.serial) = any(?))
            """;

    private final Rows rows;

    public UnitTable(DataSource database) {
        this.rows = new Rows(database, "warranty");
    }

    /** Every model by its id. */
    public Map<Long, UnitModel> models() {
        Map<Long, UnitModel> models = new HashMap<>();
        rows.list("select * from model", UnitTable::model).forEach(model -> models.put(model.id(), model));
        return models;
    }

    private static UnitModel model(ResultSet row) throws SQLException {
        short months = row.getShort("terms_months");
        Short counted = row.wasNull() ? null : months;
        return new UnitModel(
                row.getLong("id"),
                (row.getString("maker") + " " + row.getString("name")).strip(),
                WarrantyTerms.of(
                        row.getString("terms_kind"),
                        row.getString("terms_from"),
                        counted,
                        row.getString("terms_service")),
                Optional.ofNullable(Columns.day(row, "end_of_sale")),
                Optional.ofNullable(Columns.day(row, "end_of_support")),
                Optional.ofNullable(row.getBigDecimal("list_price")),
                row.getString("currency"));
    }

    /**
     * Devices without their purchases, by customer, site and name.
     *
     * @param customerId null for all
     * @param deviceIds null for all
     */
    public List<Unit> devices(Long customerId, Collection<Long> deviceIds, Map<Long, UnitModel> models) {
        Long[] ids = Columns.ids(deviceIds);
        return rows.list(DEVICES, row -> device(row, models), customerId, customerId, ids, ids);
    }

    private static Unit device(ResultSet row, Map<Long, UnitModel> models) throws SQLException {
        ZoneId zone = ZoneId.of(row.getString("time_zone"));
        return new Unit(
                OptionalLong.of(row.getLong("device_id")),
                Optional.of(DeviceKind.valueOf(row.getString("kind"))),
                row.getLong("customer_id"),
                row.getString("customer"),
                OptionalLong.of(row.getLong("site_id")),
                row.getString("site"),
                zone,
                row.getString("name"),
                row.getString("place"),
                row.getString("serial").strip(),
                Optional.ofNullable(Columns.idOrNull(row, "model_id")).map(models::get),
                Rows.instant(row, "since").map(since -> since.atZone(zone).toLocalDate()),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /**
     * What is known of units by their serial numbers.
     *
     * @param customerId whose they are, null for all; the firm's own units have no purchase and are left out
     * @param serials in lower case; null for all
     */
    public Map<Key, KnownUnit> known(Long customerId, Collection<String> serials) {
        Map<Key, KnownUnit> known = new HashMap<>();
        String[] wanted = serials == null ? null : serials.toArray(String[]::new);
        rows.list(
                KNOWN,
                row -> known.put(Key.of(row.getLong("customer_id"), row.getString("serial")), known(row)),
                customerId,
                customerId,
                wanted,
                wanted);
        return known;
    }

    private static KnownUnit known(ResultSet row) throws SQLException {
        return new KnownUnit(
                Rows.id(row, "model_id"),
                row.getString("fate").toLowerCase(Locale.ROOT).replace('_', ' '),
                Rows.instant(row, "first_read"),
                Rows.instant(row, "fate_since"));
    }

    /** The devices that a purchase may stand at: the one it names, and those that tell its serial number. */
    public List<Long> devicesOf(long purchaseId) {
        return rows.list(
                "select d.id from purchase p join site s on s.customer_id = p.customer_id join device d on d.site_id ="
                        + " s.id left join device_fact f on f.device_id = d.id and f.fact = 'SERIAL' where p.id = ? and"
                        + " (d.id = p.device_id or lower(f.value) = lower(p.serial)) order by d.id",
                row -> row.getLong(1),
                purchaseId);
    }
}
