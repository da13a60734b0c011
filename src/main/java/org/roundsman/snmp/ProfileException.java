package org.roundsman.snmp;

import java.util.List;
import java.util.stream.Collectors;

/** A profile cannot be used; the message names file, line and key, and what would be right, fault by fault. */
public final class ProfileException extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final transient List<ProfileFault> faults;

    public ProfileException(List<ProfileFault> faults) {
        super(faults.stream().map(ProfileFault::toString).collect(Collectors.joining("\n")));
        this.faults = List.copyOf(faults);
    }

    /** All of them, by line. */
    public List<ProfileFault> faults() {
        return faults;
    }
}
