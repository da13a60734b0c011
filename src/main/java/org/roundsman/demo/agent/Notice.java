package org.roundsman.demo.agent;

import java.util.List;

/**
 * One thing that an agent tells without being asked.
 *
 * @param name snmpTrapOID of versions 2 and 3
 * @param generic generic-trap of version 1 (RFC 1157): 0 to 4, or 6 where the maker has a number of his own
 * @param specific specific-trap of version 1: the maker's number, or 0
 * @param variables what belongs to it
 */
record Notice(String name, int generic, int specific, List<Variable> variables) {

    /** A variable with its whole name. */
    record Variable(String name, Shape.Value value) {}

    /** The maker's notifications: version 1 names this as their enterprise, and RFC 3584 puts a 0 between it and the number. */
    static final String MAKER = "1.3.6.1.4.1.32473.3";

    private static final String STANDARD = "1.3.6.1.6.3.1.1.5.";
    private static final String IF_ROW = "1.3.6.1.2.1.2.2.1.";
    private static final int BY_MAKER = 6;
    private static final int UP = 1;
    private static final int DOWN = 2;
    private static final int RADAR = 1;
    private static final int FAN_STOPPED = 2;
    private static final int FAN_RUNS = 3;

    static Notice coldStart() {
        return new Notice(STANDARD + 1, 0, 0, List.of());
    }

    static Notice warmStart() {
        return new Notice(STANDARD + 2, 1, 0, List.of());
    }

    /** A port came up or went down (RFC 2863): with ifIndex, ifAdminStatus and ifOperStatus. */
    static Notice link(int ifIndex, boolean up) {
        List<Variable> variables = List.of(
                integer(IF_ROW + "1." + ifIndex, ifIndex),
                integer(IF_ROW + "7." + ifIndex, UP),
                integer(IF_ROW + "8." + ifIndex, up ? UP : DOWN));
        return up ? new Notice(STANDARD + 4, 3, 0, variables) : new Notice(STANDARD + 3, 2, 0, variables);
    }

    /** A radio saw radar and moved to that channel. */
    static Notice radar(int radio, int channel) {
        return maker(RADAR, integer(MakerObjects.CHANNEL + "." + radio, channel));
    }

    static Notice fan(boolean stopped) {
        return maker(stopped ? FAN_STOPPED : FAN_RUNS, integer(MakerObjects.FAN + ".0", stopped ? 2 : 1));
    }

    private static Notice maker(int specific, Variable variable) {
        return new Notice(MAKER + ".0." + specific, BY_MAKER, specific, List.of(variable));
    }

    private static Variable integer(String name, int value) {
        return new Variable(name, (state, out) -> out.integer(Tags.INTEGER, value));
    }
}
