package org.roundsman.snmp.profile;

import java.util.List;
import org.roundsman.measure.Subject;
import org.snmp4j.smi.OID;

/**
 * One table of a profile.
 *
 * @param entry its row object; columns stand below it
 * @param rows what one row is: the device, a radio or a network
 * @param index what the parts of the index say, in their order; empty unless rows are radios or networks
 * @param pick name of the pick that chooses the one row to read, or null
 * @param fold how all rows become one figure, or null
 * @param discontinuity column whose change says that the row's counters lost their continuity, or null
 */
public record Table(
        OID entry,
        Subject rows,
        List<IndexPart> index,
        String pick,
        Fold fold,
        OID discontinuity,
        List<Measure> measures) {

    /** What one number of a row's index says. */
    public enum IndexPart {
        /** The radio's number. */
        RADIO("radio"),
        /** An ifIndex; the radio's number is its place among those of the profile's first such table. */
        INTERFACE("interface"),
        /** The network within its radio. */
        NETWORK("network"),
        /** Nothing that matters here. */
        OTHER("other");

        final String word;

        IndexPart(String word) {
            this.word = word;
        }
    }

    /** From the figures of all rows to one. */
    public enum Fold {
        AVERAGE("average"),
        SUM("sum"),
        HIGHEST("highest");

        final String word;

        Fold(String word) {
            this.word = word;
        }
    }
}
