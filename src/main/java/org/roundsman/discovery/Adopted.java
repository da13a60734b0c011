package org.roundsman.discovery;

/**
 * What an adoption did.
 *
 * @param added new devices
 * @param readdressed devices that got another address
 * @param moved devices that came from another site
 */
public record Adopted(int added, int readdressed, int moved) {

    public int all() {
        return added + readdressed + moved;
    }
}
