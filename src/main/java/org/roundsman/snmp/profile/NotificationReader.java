package org.roundsman.snmp.profile;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.roundsman.snmp.NamedNotification;
import org.roundsman.snmp.NamedNotification.Shown;
import org.snmp4j.smi.OID;

/** Reads the section {@code notifications} of a profile. */
final class NotificationReader {

    private static final int LONGEST_TITLE = 120;
    private static final int LONGEST_NAME = 60;

    private NotificationReader() {}

    static List<NamedNotification> read(Block profile) {
        List<NamedNotification> found = new ArrayList<>();
        Set<String> taken = new HashSet<>();
        for (Block block : profile.blocks("notifications")) {
            block.allow("oid", "title", "show");
            block.need("oid", "the key oid is missing: the notification's snmpTrapOID");
            block.need("title", "the key title is missing: what stands on the timeline");
            Optional<String> oid = block.oid("oid").map(OID::toDottedString);
            String title = block.text("title").orElse("");
            if (title.length() > LONGEST_TITLE) {
                block.fault("title", "at most " + LONGEST_TITLE + " characters are possible, not " + title.length());
            }
            if (oid.isPresent() && !taken.add(oid.get())) {
                block.fault("oid", "is named twice in this profile; keep one");
            }
            List<Shown> shown = shown(block);
            oid.ifPresent(name -> found.add(new NamedNotification(name, title, shown)));
        }
        return found;
    }

    private static List<Shown> shown(Block notification) {
        List<Shown> shown = new ArrayList<>();
        notification.block("show").ifPresent(block -> block.entries().forEach((name, node) -> {
            if (name.length() > LONGEST_NAME) {
                block.fault(name, "a name of at most " + LONGEST_NAME + " characters is wanted");
            }
            block.oid(name).ifPresent(oid -> shown.add(new Shown(name, oid.toDottedString())));
        }));
        return shown;
    }
}
