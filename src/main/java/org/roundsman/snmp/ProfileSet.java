package org.roundsman.snmp;

import java.nio.file.Path;
import java.util.List;

/** The profiles in use. Immutable. */
public final class ProfileSet {

    private ProfileSet() {}

    /**
     * The shipped profiles, and those in the folders, which win by name.
     *
     * @throws ProfileException naming file, line and key when one is wrong
     */
    public static ProfileSet load(List<Path> folders) {
        throw new UnsupportedOperationException();
    }
}
