package org.roundsman.snmp.session;

import org.roundsman.measure.Outcome;
import org.snmp4j.PDU;

/** What a message that belongs to a request of ours means for it. */
sealed interface Verdict {

    /** The response asked for. */
    record Answer(PDU pdu) implements Verdict {}

    /**
     * The agent told us what we lacked (its engine ID, its clock): ask again.
     *
     * @param cause how the request ends when asking again brings the same
     */
    record Again(Outcome cause, String remark) implements Verdict {}

    /** A final refusal. */
    record Refused(Outcome cause) implements Verdict {}

    /** Not to be believed or not to be understood; wait for a better one. */
    record Unusable(String remark) implements Verdict {}
}
