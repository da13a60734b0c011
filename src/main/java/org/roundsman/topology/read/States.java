package org.roundsman.topology.read;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import org.roundsman.snmp.TableReading;
import org.roundsman.snmp.TableRow;
import org.roundsman.topology.PortState;
import org.roundsman.topology.Power;
import org.roundsman.topology.PowerMatch;
import org.roundsman.topology.Supply;

/**
 * What a short reading tells: states of ports by ifIndex, and power by group and port of POWER-ETHERNET-MIB. Which port of
 * the switch a PoE port is was found by the last full reading.
 */
public record States(Instant at, Map<Integer, Link> links, List<Power> power, List<Supply> supplies) {

    /** A port's state and speed. */
    public record Link(PortState state, OptionalLong speedMbit) {}

    /** What a short reading tells. */
    public static States of(TableReading reading) {
        Map<Long, TableRow> more = new HashMap<>();
        reading.table(Tables.MORE_INTERFACES).rows().forEach(row -> more.put(row.index(0), row));
        Map<Integer, Link> links = new HashMap<>();
        for (TableRow row : reading.table(Tables.INTERFACES).rows()) {
            row.number(Tables.IF_STATE)
                    .ifPresent(state -> links.put(
                            (int) row.index(0),
                            new Link(PortState.of(state), Interfaces.mbit(more.get(row.index(0))))));
        }
        List<Power> power = reading.table(Tables.POWER_PORTS).rows().stream()
                .map(row -> PowerPorts.power(row, PowerMatch.ORDER))
                .toList();
        return new States(reading.at(), links, power, Decoding.supplies(reading));
    }
}
