package org.roundsman.snmp;

import java.util.List;

/**
 * What profiles make of a stored walk, and why.
 *
 * @param visit what a visit to a device that answers so would bring back; of the later walk where there are two
 * @param matches every profile of the set, and whether it applies
 * @param explained line by line, in the order in which lines are tried
 * @param unused what is in the walk and no profile that applies reads
 */
public record WalkReading(Visit visit, List<Match> matches, List<Explained> explained, List<UnusedGroup> unused) {

    public WalkReading {
        matches = List.copyOf(matches);
        explained = List.copyOf(explained);
        unused = List.copyOf(unused);
    }

    /**
     * Whether a profile applies.
     *
     * @param evidence condition by condition, in plain words
     */
    public record Match(String profile, String about, boolean applies, List<String> evidence) {}

    /** What became of a line of a profile. */
    public enum Fate {
        /** It gives the measurement. */
        GIVEN,
        /** Another line gives the same measurement, which is more specific or comes first. */
        PASSED_OVER,
        /** Nobody gives it. */
        MISSING
    }

    /**
     * What one line of a profile makes of one subject.
     *
     * @param key what is measured, such as {@code radio.utilisation}
     * @param who {@code device}, {@code radio 1}, {@code network Guest}
     * @param profile name of the profile, or empty where the program works it out by itself
     * @param line of the profile, or 0
     * @param value a figure in the metric's unit or a text; empty unless given
     * @param unit symbol, or empty
     * @param why how it came about, or why not
     * @param raw what the device said
     */
    public record Explained(
            String key,
            String who,
            String profile,
            int line,
            Fate fate,
            String value,
            String unit,
            String why,
            List<RawAnswer> raw) {}

    /** Those that are given. */
    public List<Explained> given() {
        return explained.stream().filter(e -> e.fate() == Fate.GIVEN).toList();
    }

    /** Those that nobody gives. */
    public List<Explained> missing() {
        return explained.stream().filter(e -> e.fate() == Fate.MISSING).toList();
    }
}
