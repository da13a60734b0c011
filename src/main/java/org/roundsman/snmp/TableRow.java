package org.roundsman.snmp;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.roundsman.snmp.decode.Texts;

/**
 * One row of a table.
 *
 * @param index what follows the column in the object identifier, each 0 to 4294967295
 * @param values by column; a column that the device did not give has no entry
 */
public record TableRow(List<Long> index, Map<Integer, TableValue> values) {

    private static final int MAC_OCTETS = 6;

    public TableRow {
        index = List.copyOf(index);
        values = Map.copyOf(values);
    }

    /** That part of the index, from 0; -1 where the index is shorter. */
    public long index(int place) {
        return place < index.size() ? index.get(place) : -1;
    }

    /** The number in that column; empty where there is none, or none of 32 bits. */
    public OptionalInt number(int column) {
        boolean fits = values.get(column) instanceof TableValue.Whole whole && whole.number() == (int) whole.number();
        return fits ? OptionalInt.of((int) ((TableValue.Whole) values.get(column)).number()) : OptionalInt.empty();
    }

    /** The number in that column, or -1. */
    public long wide(int column) {
        return values.get(column) instanceof TableValue.Whole whole ? whole.number() : -1;
    }

    /** The octets in that column, empty where there are none. */
    public Optional<byte[]> octets(int column) {
        return values.get(column) instanceof TableValue.Octets octets
                ? Optional.of(octets.octets().clone())
                : Optional.empty();
    }

    /** The octets in that column as text; empty where there are none. What is not UTF-8 stands as {@code \xHH}. */
    public String text(int column) {
        return octets(column).map(Texts::of).orElse("");
    }

    /** Six parts of the index from that place as {@code 00:00:5e:00:53:01}; empty where they are no octets. */
    public String macInIndex(int place) {
        StringBuilder text = new StringBuilder();
        for (int i = place; i < place + MAC_OCTETS; i++) {
            long part = index(i);
            if (part < 0 || part > 255) {
                return "";
            }
            text.append(text.isEmpty() ? "" : ":").append(String.format("%02x", part));
        }
        return text.toString();
    }
}
