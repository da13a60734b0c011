package org.roundsman.triage;

/** How sure a cause is. */
public enum Sureness {
    /** What was read says so. */
    SURE,
    /** It is the plainest explanation; something that would tell was not read. */
    LIKELY,
    /** Several explanations are left. */
    OPEN
}
