package org.roundsman.snmp;

import java.util.List;
import org.roundsman.snmp.walk.WalkParser;

/**
 * What could be read of the text that net-snmp's snmpbulkwalk -On or snmpwalk -On prints.
 *
 * @param faults lines that could not be read, by line; the rest is in the walk
 * @param remarks what else was odd, in plain words
 */
public record WalkText(Walk walk, List<LineFault> faults, List<String> remarks) {

    /** A longer text is refused. */
    public static final int LONGEST = 20 * 1024 * 1024;

    public WalkText {
        faults = List.copyOf(faults);
        remarks = List.copyOf(remarks);
    }

    /**
     * A line that could not be read.
     *
     * @param line counted from 1
     */
    public record LineFault(int line, String reason) {}

    /**
     * Reads a text. Never fails: what cannot be read is among the faults.
     *
     * @param text at most {@link #LONGEST} characters; a longer one gives an empty walk and one fault
     */
    public static WalkText read(String text) {
        return WalkParser.read(text);
    }
}
