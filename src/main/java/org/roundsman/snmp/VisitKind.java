package org.roundsman.snmp;

/** How much a visit asks. */
public enum VisitKind {
    /** The poll plan; with the slow facts when they are due or the device restarted. */
    ROUND,
    /** One small Get, for a device that was silent; goes on as a ROUND when it answers. */
    PROBE,
    /** One small Get and nothing else: does the agent let us in? */
    KNOCK,
    /** The poll plan and the slow facts, and every raw answer is kept. */
    TRACED
}
