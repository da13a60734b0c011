package org.roundsman.discovery.recognise;

import java.util.Collection;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * What a device says that tells it from others, without what proves nothing.
 *
 * @param maker in upper case, or empty: serial numbers compare only between devices of one maker (RFC 6933,
 *     entPhysicalMfgName)
 * @param marks its values by mark; only radios may have several
 */
public record Identity(String maker, Map<Mark, Set<String>> marks) {

    /** Cleans the values; empty ones are left out. */
    public static Identity of(
            String serial, String maker, String baseMac, Collection<String> radioMacs, String engineId) {
        Map<Mark, Set<String>> marks = new EnumMap<>(Mark.class);
        put(marks, Mark.SERIAL, serial);
        put(marks, Mark.BASE_MAC, baseMac);
        radioMacs.forEach(mac -> put(marks, Mark.RADIO_MAC, mac));
        put(marks, Mark.ENGINE_ID, engineId);
        return new Identity(maker == null ? "" : maker.strip().toUpperCase(Locale.ROOT), marks);
    }

    private static void put(Map<Mark, Set<String>> marks, Mark mark, String value) {
        String clean = mark.clean(value);
        if (!clean.isEmpty()) {
            marks.computeIfAbsent(mark, m -> new LinkedHashSet<>()).add(clean);
        }
    }

    public Set<String> at(Mark mark) {
        return marks.getOrDefault(mark, Set.of());
    }

    boolean makerFits(Identity other) {
        return maker.isEmpty() || other.maker.isEmpty() || maker.equals(other.maker);
    }

    /** Whether both say something of that mark, and nothing of it is the same. */
    boolean contradicts(Identity other, Mark mark) {
        Set<String> mine = at(mark);
        Set<String> theirs = other.at(mark);
        return !mine.isEmpty() && !theirs.isEmpty() && mine.stream().noneMatch(theirs::contains);
    }

    /** What is known of either; of this one where both differ. */
    Identity with(Identity other) {
        Map<Mark, Set<String>> all = new EnumMap<>(Mark.class);
        for (Mark mark : Mark.values()) {
            Set<String> values = at(mark).isEmpty() ? other.at(mark) : at(mark);
            if (!values.isEmpty()) {
                all.put(mark, values);
            }
        }
        return new Identity(maker.isEmpty() ? other.maker : maker, all);
    }
}
