package org.roundsman.snmp.plan;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.roundsman.snmp.session.Request;
import org.snmp4j.smi.OID;

/**
 * Object identifiers and requests that thousands of like devices have in common, kept once. Bounded: beyond that, each
 * device keeps its own. Thread-safe.
 */
final class Shared {

    private static final int MOST_OIDS = 200_000;
    private static final int MOST_REQUESTS = 5_000;
    private static final Map<OID, OID> OIDS = new ConcurrentHashMap<>();
    private static final Map<List<OID>, Request> REQUESTS = new ConcurrentHashMap<>();

    private Shared() {}

    /** An equal object identifier, to be left as it is by everybody. */
    static OID oid(OID oid) {
        OID known = OIDS.get(oid);
        if (known != null) {
            return known;
        }
        if (OIDS.size() < MOST_OIDS) {
            OIDS.put(oid, oid);
        }
        return oid;
    }

    static Request get(List<OID> oids) {
        Request known = REQUESTS.get(oids);
        if (known != null) {
            return known;
        }
        Request made = Request.get(oids);
        if (REQUESTS.size() < MOST_REQUESTS) {
            REQUESTS.put(made.oids(), made);
        }
        return made;
    }
}
