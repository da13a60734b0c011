package org.roundsman.snmp;

import java.util.NavigableMap;
import java.util.TreeMap;
import org.snmp4j.smi.Counter32;
import org.snmp4j.smi.Counter64;
import org.snmp4j.smi.Gauge32;
import org.snmp4j.smi.Integer32;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.TimeTicks;
import org.snmp4j.smi.Variable;

/**
 * The objects of an invented access point of the invented maker (enterprise 32473, RFC 5612), written down for these
 * tests from the description of its MIB.
 */
final class DemoDevice {

    private static final String E = "1.3.6.1.4.1.32473.2.";

    private DemoDevice() {}

    static NavigableMap<OID, Variable> objects(int radios, int networksEach) {
        NavigableMap<OID, Variable> all = new TreeMap<>();
        put(all, "1.3.6.1.2.1.1.1.0", new OctetString("Tamarack Radio TR-33"));
        put(all, "1.3.6.1.2.1.1.2.0", new OID("1.3.6.1.4.1.32473.1.3"));
        put(all, "1.3.6.1.2.1.1.3.0", new TimeTicks(8_640_000));
        put(all, "1.3.6.1.2.1.1.4.0", new OctetString("it@pebblegate.example"));
        put(all, "1.3.6.1.2.1.1.5.0", new OctetString("ap-reception"));
        put(all, "1.3.6.1.2.1.1.6.0", new OctetString("Reception"));
        put(all, "1.3.6.1.6.3.10.2.1.1.0", new OctetString(new byte[] {(byte) 0x80, 0, 0x7e, (byte) 0xd9, 4, 1}));
        put(all, "1.3.6.1.6.3.10.2.1.2.0", new Integer32(3));
        put(all, "1.3.6.1.6.3.10.2.1.3.0", new Integer32(86_400));
        port(all);
        put(all, E + "1.1.0", new OctetString("TR33-000123"));
        put(all, E + "1.2.0", new OctetString("TR-33"));
        put(all, E + "1.3.0", new OctetString("6.4.2"));
        put(all, E + "1.4.0", new OctetString("B"));
        put(all, E + "1.5.0", new OctetString(new byte[] {0, 0, 0x5e, 0, 0x53, 1}));
        put(all, E + "2.1.0", new Gauge32(17));
        put(all, E + "2.2.0", new Gauge32(42));
        put(all, E + "2.4.0", new Integer32(1));
        for (int n = 1; n <= radios; n++) {
            radio(all, n);
            for (int m = 1; m <= networksEach; m++) {
                put(all, E + "4.1.1.1." + n + "." + m, new OctetString(m == 1 ? "Pebblegate Staff" : "Guest " + m));
                put(all, E + "4.1.1.2." + n + "." + m, new Gauge32(2 * n + m));
            }
        }
        return all;
    }

    private static void port(NavigableMap<OID, Variable> all) {
        String entry = "1.3.6.1.2.1.2.2.1.";
        put(all, entry + "2.1", new OctetString("eth0"));
        put(all, entry + "3.1", new Integer32(6));
        put(all, entry + "5.1", new Gauge32(1_000_000_000L));
        put(all, entry + "6.1", new OctetString(new byte[] {0, 0, 0x5e, 0, 0x53, 1}));
        put(all, entry + "8.1", new Integer32(1));
        put(all, entry + "14.1", new Counter32(12));
        put(all, entry + "20.1", new Counter32(3));
        String more = "1.3.6.1.2.1.31.1.1.1.";
        put(all, more + "6.1", new Counter64(1_000_000_000_000L));
        put(all, more + "10.1", new Counter64(2_000_000_000_000L));
        put(all, more + "15.1", new Gauge32(1_000));
        put(all, more + "19.1", new TimeTicks(0));
    }

    private static void radio(NavigableMap<OID, Variable> all, int n) {
        Variable[] columns = {
            new OctetString("radio " + n),
            new OctetString(new byte[] {0, 0, 0x5e, 0, 0x53, (byte) (0x10 + n)}),
            new Integer32(n),
            new Integer32(n == 1 ? 6 : n == 2 ? 36 : 37),
            new Integer32(20 * n),
            new Integer32(185),
            new Integer32(-90 - n),
            new Gauge32(5L * n),
            new Integer32(128),
            new Counter32(1_000),
            new Counter32(100),
            new Integer32(1)
        };
        for (int c = 0; c < columns.length; c++) {
            put(all, E + "3.1.1." + (c + 1) + "." + n, columns[c]);
        }
    }

    private static void put(NavigableMap<OID, Variable> all, String oid, Variable value) {
        all.put(new OID(oid), value);
    }
}
