package org.roundsman.snmp.session;

import java.util.Optional;
import org.roundsman.measure.Outcome;
import org.snmp4j.PDU;
import org.snmp4j.smi.OID;

/** Which counter a Report PDU carries says why a request was refused (RFC 3414 section 5, RFC 3412 section 5). */
final class ReportCause {

    private static final OID USM_STATS = new OID("1.3.6.1.6.3.15.1.1");
    private static final OID MPD_STATS = new OID("1.3.6.1.6.3.11.2.1");
    private static final OID CONTEXTS = new OID("1.3.6.1.6.3.12.1");
    private static final OID BAD_VERSIONS = new OID("1.3.6.1.2.1.11.3");

    private ReportCause() {}

    /** The cause, or nothing when the report carries no counter that is known. */
    static Optional<Outcome> of(PDU report) {
        if (report.size() == 0) {
            return Optional.empty();
        }
        OID oid = report.get(0).getOid();
        return Optional.ofNullable(of(oid));
    }

    private static Outcome of(OID oid) {
        if (oid.startsWith(USM_STATS)) {
            return usm(part(oid, USM_STATS));
        }
        if (oid.startsWith(CONTEXTS)) {
            return part(oid, CONTEXTS) == 4 || part(oid, CONTEXTS) == 5 ? Outcome.CONTEXT_UNKNOWN : null;
        }
        if (oid.startsWith(MPD_STATS)) {
            return part(oid, MPD_STATS) == 1 ? Outcome.VERSION_UNSUPPORTED : null;
        }
        return oid.startsWith(BAD_VERSIONS) ? Outcome.VERSION_UNSUPPORTED : null;
    }

    private static Outcome usm(int number) {
        return switch (number) {
            case 1 -> Outcome.LEVEL_UNSUPPORTED;
            case 2 -> Outcome.TIME_WINDOW;
            case 3 -> Outcome.USER_UNKNOWN;
            case 4 -> Outcome.ENGINE_UNKNOWN;
            case 5 -> Outcome.WRONG_DIGEST;
            case 6 -> Outcome.PRIVACY_FAILED;
            default -> null;
        };
    }

    private static int part(OID oid, OID prefix) {
        return oid.size() > prefix.size() ? oid.get(prefix.size()) : 0;
    }
}
