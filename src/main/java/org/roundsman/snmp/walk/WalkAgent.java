package org.roundsman.snmp.walk;

import org.roundsman.snmp.Walk;
import org.snmp4j.PDU;
import org.snmp4j.smi.Null;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.Variable;
import org.snmp4j.smi.VariableBinding;

/** Answers Get, GetNext and GetBulk out of a walk as RFC 3416 sections 4.2.1 to 4.2.3 have it. Immutable. */
public final class WalkAgent {

    /** As an agent's own limit: a bulk answer is cut after so many variables. */
    private static final int MOST_IN_REPLY = 500;

    private final Walk walk;

    public WalkAgent(Walk walk) {
        this.walk = walk;
    }

    /** The response to a request, with its request number. */
    public PDU answer(PDU request) {
        PDU response = new PDU();
        response.setType(PDU.RESPONSE);
        response.setRequestID(request.getRequestID());
        switch (request.getType()) {
            case PDU.GET -> request.getVariableBindings().forEach(b -> response.add(get(b.getOid())));
            case PDU.GETNEXT -> request.getVariableBindings().forEach(b -> response.add(next(b.getOid())));
            case PDU.GETBULK -> bulk(request, response);
            default -> {
                response.setErrorStatus(PDU.genErr);
                response.setErrorIndex(1);
            }
        }
        return response;
    }

    private VariableBinding get(OID oid) {
        Variable value = walk.get(oid);
        if (value == null) {
            // Another instance of the object is there: the object exists, this instance of it does not.
            boolean object = oid.size() > 2 && walk.holds(oid.trim());
            value = object ? Null.noSuchInstance : Null.noSuchObject;
        }
        return new VariableBinding(oid, value);
    }

    private VariableBinding next(OID oid) {
        int place = walk.after(oid);
        return place < walk.size()
                ? new VariableBinding(walk.oid(place), walk.value(place))
                : new VariableBinding(oid, Null.endOfMibView);
    }

    private void bulk(PDU request, PDU response) {
        int single = Math.max(0, Math.min(request.getNonRepeaters(), request.size()));
        for (int i = 0; i < single; i++) {
            response.add(next(request.get(i).getOid()));
        }
        int repeated = request.size() - single;
        boolean ended = repeated == 0;
        for (int row = 0; row < request.getMaxRepetitions() && !ended && response.size() < MOST_IN_REPLY; row++) {
            ended = true;
            for (int i = 0; i < repeated; i++) {
                OID before = row == 0
                        ? request.get(single + i).getOid()
                        : response.get(response.size() - repeated).getOid();
                VariableBinding next = next(before);
                response.add(next);
                ended &= next.isException();
            }
        }
    }
}
