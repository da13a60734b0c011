package org.roundsman.snmp.session;

import org.roundsman.measure.Outcome;
import org.snmp4j.PDU;

/**
 * How one request ended.
 *
 * @param outcome ANSWERED, or why there is no response
 * @param pdu the response, its error status included; null unless answered
 * @param sent datagrams sent, retries and SNMPv3 discovery included
 * @param timeouts tries that got no reply
 * @param roundTripNanos from the try that was answered to its reply; 0 unless answered
 * @param receivedNanos when the reply came, by System.nanoTime
 * @param remark what was odd, or null
 */
public record Reply(
        Outcome outcome, PDU pdu, int sent, int timeouts, long roundTripNanos, long receivedNanos, String remark) {

    public boolean answered() {
        return outcome == Outcome.ANSWERED;
    }
}
