package org.roundsman.topology.read;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.roundsman.snmp.TableRow;
import org.roundsman.topology.Port;
import org.roundsman.topology.Power;
import org.roundsman.topology.PowerMatch;
import org.roundsman.topology.PowerState;

/**
 * Which interface each PoE port is. POWER-ETHERNET-MIB counts by group (a slot or a member of a stack) and port, and no
 * standard object leads from there to an interface. With one group, numbers that are all bridge ports, or else all
 * interfaces, are taken for those; everything else is taken in order, which is said.
 */
final class PowerPorts {

    private PowerPorts() {}

    /** Power by ifIndex. */
    static Map<Integer, Power> of(List<TableRow> rows, Interfaces interfaces) {
        Map<Integer, Power> found = new HashMap<>();
        List<Integer> ethernet = interfaces.all().stream()
                .filter(each -> each.type() == Port.ETHERNET || each.type() == 0)
                .map(Interfaces.Interface::index)
                .filter(index ->
                        !interfaces.bridged() || interfaces.bridgePortOf(index).isPresent())
                .toList();
        PowerMatch match = match(rows, interfaces);
        for (int i = 0; i < rows.size(); i++) {
            TableRow row = rows.get(i);
            int number = (int) row.index(1);
            OptionalInt index =
                    switch (match) {
                        case BRIDGE_PORT -> OptionalInt.of(interfaces.ofBridgePort(number));
                        case INTERFACE -> OptionalInt.of(number);
                        case ORDER -> i < ethernet.size() ? OptionalInt.of(ethernet.get(i)) : OptionalInt.empty();
                    };
            index.ifPresent(at -> found.put(at, power(row, match)));
        }
        return found;
    }

    private static PowerMatch match(List<TableRow> rows, Interfaces interfaces) {
        boolean oneGroup = rows.stream().map(row -> row.index(0)).distinct().count() == 1;
        List<Integer> numbers =
                rows.stream().map(row -> (int) row.index(1)).distinct().toList();
        if (oneGroup && interfaces.bridgePorts().keySet().containsAll(numbers)) {
            return PowerMatch.BRIDGE_PORT;
        }
        boolean interfaceNumbers = !interfaces.bridged()
                && numbers.stream().allMatch(number -> interfaces
                        .at(number)
                        .filter(each -> each.type() == Port.ETHERNET)
                        .isPresent());
        return oneGroup && interfaceNumbers ? PowerMatch.INTERFACE : PowerMatch.ORDER;
    }

    static Power power(TableRow row, PowerMatch match) {
        PowerState state = PowerState.of(row.number(Tables.POWER_STATE).orElse(0));
        return new Power(
                (int) row.index(0),
                (int) row.index(1),
                state,
                Power.classOf(state, row.number(Tables.POWER_CLASS).orElse(0)),
                row.number(Tables.POWER_ENABLED).orElse(1) == 1,
                match);
    }
}
