package org.roundsman.profiles;

import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.roundsman.snmp.UnusedGroup;

/** Writes the beginning of a profile, or lines into one, from objects of a walk and what a person says they are. */
public final class Proposal {

    private Proposal() {}

    /**
     * What a column or scalar is.
     *
     * @param key such as {@code radio.clients}
     * @param as how it is read, or empty for the usual
     */
    public record Meaning(String key, String as) {}

    /** A profile that applies to devices with this sysObjectID and reads nothing yet. */
    public static String skeleton(String name, String objectId, String kind) {
        String select = objectId.isEmpty()
                ? "# select:\n"
                        + "#   - {answers: 1.3.6.1.4.1.32473.1, kind: access point}   # the walk holds no sysObjectID\n"
                : "select:\n  - {object-id: " + objectId + ", kind: " + kind + "}\n";
        return "profile: " + name + "\nabout: One line that says what kind of device this is\n\n" + select;
    }

    /**
     * The lines for a table, as a member of {@code tables}.
     *
     * @param index part by part, such as {@code radio}; empty for a table about the device, whose rows are averaged
     * @param meanings by the column's number; columns without one become remarks, so that they can be found later
     */
    public static String table(UnusedGroup group, List<String> index, Map<Integer, Meaning> meanings) {
        StringBuilder text = new StringBuilder("  - entry: " + group.oid() + "\n");
        boolean rows = meanings.values().stream()
                .anyMatch(m -> !m.key().startsWith("device.") && !m.key().startsWith("fact."));
        text.append(rows ? "    index: [" + String.join(", ", index) + "]\n" : "    fold: average\n");
        text.append("    columns:\n");
        for (UnusedGroup.Column column : group.columns()) {
            Meaning meaning = meanings.get(column.number());
            if (meaning == null) {
                text.append("      # ").append(column.number()).append(": ").append(remark(column));
            } else {
                text.append("      ").append(line(meaning, "column", String.valueOf(column.number())));
                text.append("   # ").append(remark(column));
            }
            text.append('\n');
        }
        return text.toString();
    }

    /** The lines for scalars, as members of {@code scalars}. */
    public static String scalars(UnusedGroup group, Map<Integer, Meaning> meanings) {
        StringBuilder text = new StringBuilder();
        for (UnusedGroup.Column scalar : group.columns()) {
            Meaning meaning = meanings.get(scalar.number());
            if (meaning == null) {
                text.append("  # ").append(scalar.oid()).append(": ").append(remark(scalar));
            } else {
                text.append("  ").append(line(meaning, "oid", scalar.oid()));
                text.append("   # ").append(remark(scalar));
            }
            text.append('\n');
        }
        return text.toString();
    }

    private static String line(Meaning meaning, String object, String place) {
        return meaning.as().isEmpty()
                ? meaning.key() + ": " + place
                : meaning.key() + ": {" + object + ": " + place + ", as: " + meaning.as() + "}";
    }

    private static String remark(UnusedGroup.Column column) {
        List<String> samples = column.samples().stream()
                .map(sample -> sample.replaceAll("[\\p{Cntrl}]+", " "))
                .map(sample -> sample.length() > 40 ? sample.substring(0, 40) + "…" : sample)
                .toList();
        return column.syntax() + ", such as " + String.join("; ", samples);
    }

    /** Puts lines into a profile's text below a key of the first level, which is added at the end when it is missing. */
    public static String insert(String text, String key, String lines) {
        Matcher at = Pattern.compile("(?m)^" + key + ":[ \\t]*(#.*)?\\r?$").matcher(text);
        if (!at.find()) {
            return text + (text.endsWith("\n") ? "" : "\n") + "\n" + key + ":\n" + lines;
        }
        String rest = text.substring(at.end()).replaceFirst("^\\n", "");
        Matcher first = Pattern.compile("(?m)^([ ]*)[^#\\s]").matcher(rest);
        String indented =
                first.find() && !first.group(1).equals("  ") ? lines.replaceAll("(?m)^ {2}", first.group(1)) : lines;
        return text.substring(0, at.end()) + "\n" + indented + rest;
    }
}
