package org.roundsman.snmp.decode;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.Variable;

/** Reads DateAndTime (RFC 2579): 8 octets of local time, or 11 with the distance from UTC. */
public final class Clocks {

    private static final int LOCAL = 8;
    private static final int ZONED = 11;
    /** Local times stand at most this far from UTC, with some room for a clock that is merely inexact. */
    private static final double FARTHEST_ZONE_SECONDS = 15 * 3600;

    private Clocks() {}

    /**
     * The device's clock minus ours.
     *
     * @return seconds; NaN when it is no time, or when a time without zone is so near that the zone may be the reason
     */
    public static double offset(Variable value, long ourMillis) {
        if (!(value instanceof OctetString octets) || octets.length() != LOCAL && octets.length() != ZONED) {
            return Double.NaN;
        }
        byte[] b = octets.getValue();
        double offset;
        try {
            offset = utcMillis(b) / 1e3 - ourMillis / 1e3;
        } catch (DateTimeException e) {
            return Double.NaN;
        }
        return b.length == LOCAL && Math.abs(offset) < FARTHEST_ZONE_SECONDS ? Double.NaN : offset;
    }

    private static long utcMillis(byte[] b) {
        int year = (b[0] & 0xff) << 8 | b[1] & 0xff;
        int second = Math.min(b[6], 59);
        LocalDateTime local = LocalDateTime.of(year, b[2], b[3], b[4], b[5], second, b[7] * 100_000_000);
        ZoneOffset zone = ZoneOffset.UTC;
        if (b.length == ZONED) {
            int sign = b[8] == '-' ? -1 : 1;
            zone = ZoneOffset.ofHoursMinutes(sign * b[9], sign * b[10]);
        }
        return local.toInstant(zone).toEpochMilli();
    }
}
