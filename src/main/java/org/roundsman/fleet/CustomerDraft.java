package org.roundsman.fleet;

import java.util.Map;

/** A customer as entered. */
public record CustomerDraft(String name, String note) {

    /** What is wrong with it by itself, by field; empty when nothing is. What else the fleet holds is not looked at. */
    public Map<String, String> faults() {
        InputCheck check = new InputCheck();
        check(check);
        return check.faults();
    }

    void check(InputCheck check) {
        check.text("name", name, 1, 120);
        check.text("note", note, 0, 2000);
    }
}
