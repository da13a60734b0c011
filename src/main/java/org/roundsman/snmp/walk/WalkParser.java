package org.roundsman.snmp.walk;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.roundsman.snmp.Walk;
import org.roundsman.snmp.WalkText;
import org.roundsman.snmp.WalkText.LineFault;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.Variable;

/**
 * Reads what net-snmp's tools print of variables, as observed of its release 5.9 and described in snmpcmd(1): names by
 * numbers, with -On or without any MIB module. Values may go on over several lines.
 */
public final class WalkParser {

    private static final Pattern NUMBERED =
            Pattern.compile("\\.?((?:iso|[0-2])(?:\\.\\d{1,10})+) = ?(.*)", Pattern.DOTALL);
    private static final Pattern NAMED = Pattern.compile("[A-Za-z][\\w-]*(?:::|\\.)[\\w.\"'-]+ = .*");
    private static final Pattern QUICK = Pattern.compile("\\.?[0-2](?:\\.\\d{1,10})+ [^=].*");
    /** What the tools say besides variables. */
    private static final Pattern CHATTER =
            Pattern.compile("\\s*|Variables found: \\d+|End of MIB|Created directory: .*|Timeout: .*");

    private static final int MOST_FAULTS = 500;
    private static final int LONGEST_NAME = 128;
    private static final long LARGEST_SUB_ID = 4_294_967_295L;

    private final TextLines lines;
    private final TreeMap<OID, Variable> found = new TreeMap<>();
    private final List<LineFault> faults = new ArrayList<>();
    private int moreFaults;
    private int absent;
    private int outOfOrder;
    private int twice;
    private int typed;
    private int untyped;
    private OID last;

    private WalkParser(TextLines lines) {
        this.lines = lines;
    }

    public static WalkText read(String text) {
        if (text.length() > WalkText.LONGEST) {
            String reason =
                    "the text is longer than " + WalkText.LONGEST / 1024 / 1024 + " MiB; nothing of it was read";
            return new WalkText(new Walk(new TreeMap<>()), List.of(new LineFault(1, reason)), List.of());
        }
        return new WalkParser(new TextLines(text)).read();
    }

    private WalkText read() {
        while (lines.hasNext()) {
            int line = lines.number();
            String text = lines.next();
            Matcher numbered = NUMBERED.matcher(text);
            if (numbered.matches()) {
                variable(line, numbered.group(1), numbered.group(2));
            } else if (!CHATTER.matcher(text).matches()) {
                fault(line, whatElse(text));
            }
            if (found.size() >= Walk.MOST_VARIABLES && lines.hasNext()) {
                fault(lines.number(), "more than " + Walk.MOST_VARIABLES + " variables; the rest was not read");
                break;
            }
        }
        if (typed == 0 && untyped > 1) {
            fault(1, "the values have no types: print the walk with -On, without -Oq and -OQ");
        }
        return new WalkText(new Walk(found), faults, remarks());
    }

    static boolean beginsVariable(String line) {
        return NUMBERED.matcher(line).matches() || CHATTER.matcher(line).matches() && !line.isBlank();
    }

    private static String whatElse(String text) {
        if (NAMED.matcher(text).matches()) {
            return "a name instead of numbers: print the walk with -On";
        }
        if (QUICK.matcher(text).matches()) {
            return "a value without its type: print the walk with -On, without -Oq";
        }
        return "no variable begins here; a line such as .1.3.6.1.2.1.1.3.0 = Timeticks: (4711) 0:00:47.11 is wanted";
    }

    private void variable(int line, String name, String value) {
        OID oid = oid(name);
        if (oid == null) {
            fault(
                    line,
                    name + " is no object identifier: each number is at most " + LARGEST_SUB_ID + ", and at most "
                            + LONGEST_NAME + " of them");
            return;
        }
        ValueText.Result result = ValueText.read(value, lines);
        if (result instanceof ValueText.Read read) {
            typed += read.typed() ? 1 : 0;
            untyped += read.typed() ? 0 : 1;
            take(oid, read.value());
        } else if (result instanceof ValueText.Wrong wrong) {
            fault(line, wrong.reason());
        } else {
            absent++;
        }
    }

    private void take(OID oid, Variable value) {
        if (last != null && oid.compareTo(last) < 0) {
            outOfOrder++;
        }
        last = oid;
        if (found.put(oid, value) != null) {
            twice++;
        }
    }

    static OID oid(String name) {
        String dotted = name.startsWith("iso") ? "1" + name.substring(3) : name;
        String[] parts = dotted.split("\\.");
        for (String part : parts) {
            if (part.length() > 10 || Long.parseLong(part) > LARGEST_SUB_ID) {
                return null;
            }
        }
        boolean encodable = parts.length <= LONGEST_NAME && (parts[0].equals("2") || Long.parseLong(parts[1]) < 40);
        return encodable ? new OID(dotted) : null;
    }

    private void fault(int line, String reason) {
        if (faults.size() < MOST_FAULTS) {
            faults.add(new LineFault(line, reason));
        } else {
            moreFaults++;
        }
    }

    private List<String> remarks() {
        List<String> remarks = new ArrayList<>();
        say(remarks, outOfOrder, "out of order; the walk was sorted");
        say(remarks, twice, "there twice; the later value counts");
        say(remarks, absent, "without a value, as the device said (no such object, end of the view); left out");
        if (moreFaults > 0) {
            remarks.add(moreFaults + " more faulty lines are not listed");
        }
        return remarks;
    }

    private static void say(List<String> remarks, int count, String what) {
        if (count > 0) {
            remarks.add(count + (count == 1 ? " variable is " : " variables are ") + what);
        }
    }
}
