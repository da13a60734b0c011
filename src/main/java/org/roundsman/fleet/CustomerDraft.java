package org.roundsman.fleet;

/** A customer as entered. */
public record CustomerDraft(String name, String note) {

    void check(InputCheck check) {
        check.text("name", name, 1, 120);
        check.text("note", note, 0, 2000);
    }
}
