package org.roundsman.fleet.transfer;

/**
 * Something of the fleet as it is stored, and as an upload wants it. Two entries are the same only when they are one object.
 *
 * @param <D> its draft
 */
final class Entry<D> {

    private final Entry<?> owner;
    private final D stored;
    private Long id;
    private D wanted;
    private Line line;

    /** Something stored. */
    Entry(long id, Entry<?> owner, D stored) {
        this.id = id;
        this.owner = owner;
        this.stored = stored;
    }

    /** Something that a row adds. */
    Entry(Entry<?> owner, Line line) {
        this.owner = owner;
        this.stored = null;
        this.line = line;
    }

    /** A site's customer, a device's site, a purchase's customer; null for a customer. */
    Entry<?> owner() {
        return owner;
    }

    boolean isNew() {
        return stored == null;
    }

    /** Null for a new one. */
    D stored() {
        return stored;
    }

    /** Null until a row could be read. */
    D wanted() {
        return wanted;
    }

    void wants(D draft) {
        wanted = draft;
    }

    /** What it is after the upload, or before it where no row wants anything; null where its row cannot be read. */
    D last() {
        return wanted == null ? stored : wanted;
    }

    /** The row that is about it; null when none is. */
    Line line() {
        return line;
    }

    void claim(Line by) {
        line = by;
    }

    /** Null for a new one that has not been written yet. */
    Long id() {
        return id;
    }

    void written(long newId) {
        id = newId;
    }
}
