package org.roundsman.snmp.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.roundsman.snmp.TableQuestion;
import org.roundsman.snmp.TableRow;
import org.roundsman.snmp.TableValue;
import org.roundsman.snmp.decode.Numbers;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.Variable;

/**
 * Takes what a walk brings as rows. Nothing of it is kept among the objects that devices share: forwarding tables are
 * large, and no two are alike.
 */
final class TableRows extends SlotBook {

    private final TableQuestion question;
    private final OID entry;
    private final Map<OID, Map<Integer, TableValue>> rows = new TreeMap<>();

    TableRows(TableQuestion question) {
        this.question = question;
        this.entry = new OID(question.entry());
    }

    OID entry() {
        return entry;
    }

    List<OID> columns() {
        return question.columns().stream()
                .map(column -> new OID(entry).append(column))
                .toList();
    }

    @Override
    void put(OID oid, Variable value) {
        if (value != null && oid.size() > entry.size() + 1) {
            int column = oid.get(entry.size());
            OID index = new OID(oid.getValue(), entry.size() + 1, oid.size() - entry.size() - 1);
            rows.computeIfAbsent(index, made -> new HashMap<>()).put(column, plain(value));
        }
    }

    private static TableValue plain(Variable value) {
        if (value instanceof OctetString octets) {
            return new TableValue.Octets(octets.getValue());
        }
        return Numbers.isWhole(value) ? new TableValue.Whole(value.toLong()) : new TableValue.Other(value.toString());
    }

    List<TableRow> rows() {
        List<TableRow> list = new ArrayList<>();
        rows.forEach((index, values) -> list.add(new TableRow(numbers(index), values)));
        return list;
    }

    private static List<Long> numbers(OID index) {
        List<Long> numbers = new ArrayList<>(index.size());
        for (int part : index.getValue()) {
            numbers.add(part & 0xffff_ffffL);
        }
        return numbers;
    }
}
