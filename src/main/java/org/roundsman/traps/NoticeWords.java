package org.roundsman.traps;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import org.roundsman.snmp.NamedNotification;
import org.roundsman.snmp.NamedNotification.Shown;
import org.roundsman.snmp.Notification;
import org.roundsman.snmp.RawAnswer;

/** Puts notifications into words: the standard ones of SNMPv2-MIB and IF-MIB, and those that profiles name. */
final class NoticeWords {

    private static final int MOST_VARIABLES = 20;
    private static final int LONGEST_VALUE = 200;

    /** snmpTraps of SNMPv2-MIB (RFC 3418). */
    static final String LINK_DOWN = "1.3.6.1.6.3.1.1.5.3";

    static final String LINK_UP = "1.3.6.1.6.3.1.1.5.4";

    /** IF-MIB (RFC 2863). */
    private static final String IF_INDEX = "1.3.6.1.2.1.2.2.1.1";

    private static final String IF_DESCR = "1.3.6.1.2.1.2.2.1.2";
    private static final String IF_NAME = "1.3.6.1.2.1.31.1.1.1.1";
    private static final Shown ADMIN_STATUS = new Shown("wanted state", "1.3.6.1.2.1.2.2.1.7");
    private static final Shown OPER_STATUS = new Shown("state", "1.3.6.1.2.1.2.2.1.8");
    private static final List<String> STATES =
            List.of("", "up", "down", "testing", "unknown", "dormant", "not present", "down, by a lower layer");

    private static final Map<String, NamedNotification> STANDARD = Map.of(
            "1.3.6.1.6.3.1.1.5.1",
            named("1.3.6.1.6.3.1.1.5.1", "Cold start"),
            "1.3.6.1.6.3.1.1.5.2",
            named("1.3.6.1.6.3.1.1.5.2", "Warm start"),
            LINK_DOWN,
            named(LINK_DOWN, "Link down", ADMIN_STATUS, OPER_STATUS),
            LINK_UP,
            named(LINK_UP, "Link up", ADMIN_STATUS, OPER_STATUS),
            "1.3.6.1.6.3.1.1.5.5",
            named("1.3.6.1.6.3.1.1.5.5", "Authentication failure"));

    private final Function<String, Optional<NamedNotification>> profiles;

    /** @param profiles what profiles call a notification, by its OID */
    NoticeWords(Function<String, Optional<NamedNotification>> profiles) {
        this.profiles = profiles;
    }

    private static NamedNotification named(String oid, String title, Shown... shown) {
        return new NamedNotification(oid, title, List.of(shown));
    }

    /** The notification's name; empty for one that neither a standard nor a profile names. */
    Optional<NamedNotification> name(String oid) {
        return profiles.apply(oid).or(() -> Optional.ofNullable(STANDARD.get(oid)));
    }

    /** One line for the timeline; of a link, with the interface as far as the notification says it. */
    static NoticeTitle title(NamedNotification named, Notification notification) {
        boolean link = named.oid().equals(LINK_DOWN) || named.oid().equals(LINK_UP);
        if (!link) {
            return NoticeTitle.of(named.title());
        }
        String index = index(notification.variables());
        return new NoticeTitle(named.title() + face(notification.variables(), index), named.title(), number(index));
    }

    private static String index(List<RawAnswer> variables) {
        return value(variables, IF_INDEX)
                .or(() -> variables.stream()
                        .filter(v -> ADMIN_STATUS.fits(v.oid()) || OPER_STATUS.fits(v.oid()))
                        .map(v -> v.oid().substring(v.oid().lastIndexOf('.') + 1))
                        .findFirst())
                .orElse("");
    }

    /** InterfaceIndex is a whole number from 1 to 2147483647 (RFC 2863); a device may send anything. */
    private static OptionalInt number(String index) {
        long number = index.matches("[0-9]{1,10}") ? Long.parseLong(index) : 0;
        return number >= 1 && number <= Integer.MAX_VALUE ? OptionalInt.of((int) number) : OptionalInt.empty();
    }

    /** Which interface a link notification is about: {@code : interface eth1 (2)}. */
    private static String face(List<RawAnswer> variables, String index) {
        String name =
                value(variables, IF_NAME).or(() -> value(variables, IF_DESCR)).orElse("");
        if (name.isEmpty() && index.isEmpty()) {
            return "";
        }
        String both = name.isEmpty() || index.isEmpty() ? name + index : name + " (" + index + ")";
        return ": interface " + both;
    }

    private static Optional<String> value(List<RawAnswer> variables, String object) {
        return variables.stream()
                .filter(v -> v.oid().startsWith(object + "."))
                .map(v -> cut(v.value()))
                .filter(text -> !text.isBlank())
                .findFirst();
    }

    /** More lines: how it came, the variables that have a name, then all others. */
    static String detail(NamedNotification named, Notification notification) {
        List<String> lines = new ArrayList<>();
        lines.add((notification.inform() ? "Inform" : "Trap") + " of SNMP "
                + (notification.version() == 2 ? "v2c" : "v" + notification.version()) + " from "
                + notification.from().getHostAddress() + ", " + notification.oid());
        List<RawAnswer> rest = new ArrayList<>(notification.variables());
        for (Shown shown : named.shown()) {
            for (RawAnswer variable : notification.variables()) {
                if (shown.fits(variable.oid()) && rest.remove(variable)) {
                    lines.add(shown.name() + ": " + shown(shown, variable));
                }
            }
        }
        rest.stream().limit(MOST_VARIABLES).forEach(v -> lines.add(v.oid() + " = " + cut(v.value())));
        if (rest.size() > MOST_VARIABLES) {
            lines.add("and " + (rest.size() - MOST_VARIABLES) + " more variables");
        }
        return String.join("\n", lines);
    }

    private static String shown(Shown shown, RawAnswer variable) {
        boolean state = shown.equals(ADMIN_STATUS) || shown.equals(OPER_STATUS);
        if (state && variable.value().matches("[1-7]")) {
            return STATES.get(Integer.parseInt(variable.value()));
        }
        return cut(variable.value());
    }

    private static String cut(String value) {
        return value.length() > LONGEST_VALUE ? value.substring(0, LONGEST_VALUE) + "…" : value;
    }
}
