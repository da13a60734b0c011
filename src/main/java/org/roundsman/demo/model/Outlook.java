package org.roundsman.demo.model;

/** What faults and restarts mean for one device at one moment. Filled again and again; one thread at a time. */
public final class Outlook {
    /** The faults in force, as bits. */
    public int faults;
    /** Epoch milliseconds of the last restart. */
    public long restart;
    /** Whether its agent answers nobody. */
    public boolean silent;
}
