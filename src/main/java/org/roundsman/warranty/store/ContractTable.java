package org.roundsman.warranty.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import javax.sql.DataSource;
import org.roundsman.system.Rows;
import org.roundsman.warranty.Contract;
import org.roundsman.warranty.ContractDraft;

/** Extended contracts and the units they cover. */
public final class ContractTable {

    private static final String WHOLE = """
            select w.*, c.name as customer,
                (select count(*) from contract_unit u where u.contract_id = w.id)::integer as units
            from warranty_contract w
            join customer c on c.id = w.customer_id
            """;

    private static final String TOLD = """
            select 1 from device_fact f
            join device d on d.id = f.device_id
            join site s on s.id = d.site_id
            where s.customer_id = ? and f.fact = 'SERIAL' and lower(f.value) = lower(?)
            """;

    private final Rows rows;

    public ContractTable(DataSource database) {
        this.rows = new Rows(database, "warranty");
    }

    /**
     * A unit by its serial number.
     *
     * @param serial in lower case
     */
    public record Key(long customerId, String serial) {

        public static Key of(long customerId, String serial) {
            return new Key(customerId, serial.strip().toLowerCase(Locale.ROOT));
        }
    }

    /** Contracts of one customer, null for all; the one that ends last first. */
    public List<Contract> all(Long customerId) {
        return rows.list(
                WHOLE + " where ?::bigint is null or w.customer_id = ? order by w.ends_on desc, lower(w.number), w.id",
                ContractTable::contract,
                customerId,
                customerId);
    }

    public Optional<Contract> find(long id) {
        return rows.one(WHOLE + " where w.id = ?", ContractTable::contract, id);
    }

    /** The same, and keeps others from changing it until the end of this thread's transaction. */
    public Optional<Contract> hold(long id) {
        rows.list("select id from warranty_contract where id = ? for update", row -> row.getLong(1), id);
        return find(id);
    }

    private static Contract contract(ResultSet row) throws SQLException {
        return new Contract(
                row.getLong("id"),
                row.getLong("customer_id"),
                row.getString("customer"),
                row.getString("number"),
                row.getString("supplier"),
                Columns.service(row, "service"),
                Columns.day(row, "begins_on"),
                Columns.day(row, "ends_on"),
                row.getString("note"),
                row.getInt("units"));
    }

    /**
     * The contracts of each unit that has one; how many units they cover is left out.
     *
     * @param customerId only of that customer, null for all
     * @param customers only of these, null for all
     */
    public Map<Key, List<Contract>> byUnit(Long customerId, Collection<Long> customers) {
        Long[] ids = Columns.ids(customers);
        Map<Long, Contract> known = new HashMap<>();
        rows.list(
                        "select w.*, c.name as customer, 0 as units from warranty_contract w join customer c on c.id ="
                                + " w.customer_id where (?::bigint is null or w.customer_id = ?) and (?::bigint[] is null or"
                                + " w.customer_id = any(?))",
                        ContractTable::contract,
                        customerId,
                        customerId,
                        ids,
                        ids)
                .forEach(contract -> known.put(contract.id(), contract));
        Map<Key, List<Contract>> found = new HashMap<>();
        rows.list(
                "select contract_id, serial from contract_unit where contract_id = any(?)",
                row -> {
                    Contract contract = known.get(row.getLong(1));
                    return found.computeIfAbsent(
                                    Key.of(contract.customerId(), row.getString(2)), made -> new ArrayList<>())
                            .add(contract);
                },
                (Object) Columns.ids(known.keySet()));
        return found;
    }

    /** Serial numbers that a contract covers. */
    public Set<String> serials(long contractId) {
        return new TreeSet<>(rows.list(
                "select serial from contract_unit where contract_id = ?", row -> row.getString(1), contractId));
    }

    public boolean hasCustomer(long id) {
        return rows.one("select 1 from customer where id = ?", row -> 1, id).isPresent();
    }

    /** The contracts that name that serial number, by first day. */
    public List<Contract> ofUnit(long customerId, String serial) {
        return rows.list(
                WHOLE + " where w.customer_id = ? and exists (select 1 from contract_unit u where u.contract_id = w.id"
                        + " and lower(u.serial) = lower(?)) order by w.begins_on, w.id",
                ContractTable::contract,
                customerId,
                serial);
    }

    /** Whether another contract of the customer has that number; nobody else takes it until this transaction ends. */
    public boolean taken(long customerId, String number, long but) {
        Columns.holdCustomer(rows, customerId);
        return rows.one(
                        "select 1 from warranty_contract where customer_id = ? and lower(number) = lower(?) and id <> ?",
                        row -> 1,
                        customerId,
                        number,
                        but)
                .isPresent();
    }

    /** Stores a new one; empty when another has taken the number meanwhile. */
    public OptionalLong add(long customerId, ContractDraft draft) {
        return rows.one(
                        "insert into warranty_contract (customer_id, number, supplier, service, begins_on, ends_on, note)"
                                + " values (?, ?, ?, ?, ?, ?, ?) on conflict do nothing returning id",
                        row -> row.getLong(1),
                        customerId,
                        draft.number(),
                        draft.supplier(),
                        draft.service(),
                        draft.from(),
                        draft.to(),
                        draft.note())
                .map(OptionalLong::of)
                .orElse(OptionalLong.empty());
    }

    public void change(long id, ContractDraft draft) {
        rows.run(
                "update warranty_contract set number = ?, supplier = ?, service = ?, begins_on = ?, ends_on = ?, note = ?"
                        + " where id = ?",
                draft.number(),
                draft.supplier(),
                draft.service(),
                draft.from(),
                draft.to(),
                draft.note(),
                id);
    }

    public void remove(long id) {
        rows.run("delete from warranty_contract where id = ?", id);
    }

    /** Covers these serial numbers too; returns how many it did not cover yet. */
    public int cover(long id, Collection<String> serials) {
        return rows.run(
                "insert into contract_unit (contract_id, serial) select ?, unnest(?::text[]) on conflict do nothing",
                id,
                serials.toArray(String[]::new));
    }

    /**
     * Has the contracts of a customer that cover a serial number cover another one in its place, unless a device tells the
     * old one: then there is such a unit, and it keeps its cover.
     *
     * @return the contracts that are changed
     */
    public List<Contract> rename(long customerId, String old, String fresh) {
        if (rows.one(TOLD, row -> 1, customerId, old).isPresent()) {
            return List.of();
        }
        List<Contract> found = ofUnit(customerId, old);
        boolean same = old.equalsIgnoreCase(fresh);
        for (Contract one : found) {
            if (!same) {
                uncover(one.id(), List.of(fresh));
            }
            rows.run(
                    "update contract_unit set serial = ? where contract_id = ? and lower(serial) = lower(?)",
                    fresh,
                    one.id(),
                    old);
        }
        return found;
    }

    /** Covers these no more; returns how many it did cover. */
    public int uncover(long id, Collection<String> serials) {
        return rows.run(
                "delete from contract_unit where contract_id = ? and lower(serial) = any(?::text[])",
                id,
                serials.stream().map(one -> one.toLowerCase(Locale.ROOT)).toArray(String[]::new));
    }
}
