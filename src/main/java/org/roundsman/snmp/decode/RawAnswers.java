package org.roundsman.snmp.decode;

import java.util.Map;
import java.util.TreeMap;
import org.roundsman.snmp.RawAnswer;
import org.roundsman.snmp.profile.Measure;
import org.roundsman.snmp.profile.Profile;
import org.roundsman.snmp.profile.Table;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.Variable;
import org.snmp4j.smi.VariableBinding;

/** Shows variables as they came, with the names that profiles give them. Immutable; safe to share between threads. */
public final class RawAnswers {

    private final TreeMap<OID, String> names = new TreeMap<>();

    public RawAnswers(Iterable<Profile> profiles, Map<OID, String> others) {
        names.putAll(others);
        for (Profile profile : profiles) {
            profile.scalars().forEach(this::name);
            for (Table table : profile.tables()) {
                table.measures().forEach(this::name);
            }
        }
    }

    private void name(Measure measure) {
        measure.objects().forEach(oid -> names.putIfAbsent(oid, measure.target().key()));
    }

    public RawAnswer of(VariableBinding binding) {
        Map.Entry<OID, String> nearest = names.floorEntry(binding.getOid());
        boolean named = nearest != null && binding.getOid().startsWith(nearest.getKey());
        Variable value = binding.getVariable();
        return new RawAnswer(
                binding.getOid().toDottedString(),
                named ? nearest.getValue() : "",
                binding.isException() ? "" : value.getSyntaxString(),
                value instanceof OctetString octets && !octets.isPrintable() ? octets(octets) : Texts.of(value));
    }

    private static String octets(OctetString octets) {
        String hex = octets.toHexString(' ');
        return hex.length() > 1_000 ? hex.substring(0, 1_000) + "\u2026" : hex;
    }
}
