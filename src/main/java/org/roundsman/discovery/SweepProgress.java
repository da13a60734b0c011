package org.roundsman.discovery;

/**
 * How far a sweep is. Every address is counted once.
 *
 * @param asked addresses that are done, those left out included
 * @param answered addresses that let us in
 * @param refused addresses that speak SNMP and refused our credentials
 * @param closed hosts that are there, with nothing at the port
 * @param silent addresses from which nothing came
 * @param leftOut addresses that were set aside before
 * @param waiting it waits for other sweeps to end
 */
public record SweepProgress(
        Sweep sweep, int asked, int answered, int refused, int closed, int silent, int leftOut, boolean waiting) {

    /** Whole per cent, 0 to 100. */
    public int percent() {
        return (int) (100L * asked / sweep.total());
    }

    /** Whether there are addresses that it did not come to. */
    public boolean isUnfinished() {
        return !sweep.isRunning() && asked < sweep.total();
    }
}
