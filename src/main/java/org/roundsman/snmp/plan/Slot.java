package org.roundsman.snmp.plan;

import org.roundsman.snmp.counter.CounterTrack;
import org.roundsman.snmp.counter.Moment;
import org.roundsman.snmp.decode.Numbers;
import org.roundsman.snmp.session.Request;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.Variable;

/** One object instance of one device: its last value and, when it is a counter, its track. */
final class Slot {

    /** Octets that a number may grow to until the next reply. */
    private static final int NUMBER_SIZE = 6;

    private static final int WIDE_NUMBER_SIZE = 11;

    final OID oid;
    /** The last value; null when the device did not give one. */
    Variable value;
    /** The device said that it has no such object or instance. */
    boolean gone;
    /** The device gave a value since the visit began. */
    boolean fresh;

    private CounterTrack track;

    Slot(OID oid) {
        this.oid = Shared.oid(oid);
    }

    /** Takes what a reply said; null for an exception or an error. */
    void take(Variable received) {
        value = received;
        fresh = received != null;
        gone = received == null;
    }

    /** Before a visit: what is asked at each round has no value until the device gives one. */
    void expect() {
        value = null;
        fresh = false;
        gone = false;
    }

    /** Puts a counter's fresh value on its track. */
    void track(Slot discontinuity, Moment now) {
        if (track == null) {
            track = new CounterTrack();
        }
        if (fresh && value != null && Numbers.isWhole(value)) {
            long discontinued = discontinuity == null || discontinuity.value == null ? 0 : discontinuity.value.toLong();
            track.sample(Numbers.bits(value), value.toLong(), discontinued, now);
        } else {
            track.miss();
        }
    }

    CounterTrack track() {
        return track;
    }

    /** Octets that this variable takes in a reply, at most likely. */
    int size() {
        int least = value == null || Numbers.bits(value) == 64 ? WIDE_NUMBER_SIZE : NUMBER_SIZE;
        return Request.size(oid) + Math.max(least, value == null ? 0 : value.getBERLength());
    }
}
