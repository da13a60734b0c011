package org.roundsman.web.triage;

import org.roundsman.fleet.CustomerScope;
import org.roundsman.people.Role;
import org.roundsman.people.SignedIn;

/**
 * Who reads the triage page.
 *
 * @param name sign-in name, as alarms note who has them
 * @param acts may handle alarms
 * @param inside one of the firm's own people: notes, reasons and names are for them only
 */
record Reader(CustomerScope scope, String name, boolean acts, boolean inside) {

    static Reader of(SignedIn person) {
        Role role = person.role();
        return new Reader(person.scope(), person.name(), role.actsOnAlarms(), role != Role.VIEWER);
    }

    /** Who has it, in words: {@code you have it}, {@code nobody has it yet}. */
    String holder(String takenBy) {
        if (takenBy.isEmpty()) {
            return "nobody has it yet";
        }
        if (!inside) {
            return "somebody is on it";
        }
        return takenBy.equals(name) ? "you have it" : takenBy + " has it";
    }
}
