package org.roundsman.demo.model;

import org.roundsman.demo.Fault;

/** What faults and restarts mean for one device at one moment. Filled again and again; one thread at a time. */
public final class Outlook {

    private static final long FIRST_FRAME = 20_000;

    /** The faults in force, as bits. */
    public int faults;
    /** Epoch milliseconds of the last restart. */
    public long restart;
    /** Whether its agent answers nobody. */
    public boolean silent;
    /** Whether it is silent because it starts after that restart. */
    public boolean booting;
    /** Whether its cable carries anything: not while it has no power, or begins to boot. */
    public boolean linked;
    /** Epoch milliseconds since when that has been so. */
    public long linkChanged;

    /** Whether it tells its neighbours about itself by LLDP at that time. */
    public boolean tells(long epochMilli) {
        return linked && !Fault.HUNG.in(faults) && epochMilli >= linkChanged + FIRST_FRAME;
    }
}
