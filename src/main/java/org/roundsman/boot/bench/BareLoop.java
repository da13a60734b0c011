package org.roundsman.boot.bench;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.roundsman.demo.DemoCredential;
import org.roundsman.demo.DemoDevice;
import org.snmp4j.CommunityTarget;
import org.snmp4j.PDU;
import org.snmp4j.Snmp;
import org.snmp4j.event.ResponseEvent;
import org.snmp4j.event.ResponseListener;
import org.snmp4j.mp.SnmpConstants;
import org.snmp4j.smi.Address;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.UdpAddress;
import org.snmp4j.smi.VariableBinding;
import org.snmp4j.transport.DefaultUdpTransportMapping;

/**
 * What SNMP4J does when nothing but sending and counting is asked of it: one Get of twenty variables at a time to each of
 * a few hundred devices. The yardstick beside the rounds, in the same run against the same agents.
 */
final class BareLoop {

    private static final int IN_FLIGHT = 256;

    /** sysDescr to sysServices, and the device scalars of the invented maker: twenty variables that every AP has. */
    private static final List<String> OIDS = List.of(
            "1.3.6.1.2.1.1.1.0",
            "1.3.6.1.2.1.1.2.0",
            "1.3.6.1.2.1.1.3.0",
            "1.3.6.1.2.1.1.4.0",
            "1.3.6.1.2.1.1.5.0",
            "1.3.6.1.2.1.1.6.0",
            "1.3.6.1.2.1.1.7.0",
            "1.3.6.1.4.1.32473.2.1.1.0",
            "1.3.6.1.4.1.32473.2.1.2.0",
            "1.3.6.1.4.1.32473.2.1.3.0",
            "1.3.6.1.4.1.32473.2.1.4.0",
            "1.3.6.1.4.1.32473.2.2.1.0",
            "1.3.6.1.4.1.32473.2.2.2.0",
            "1.3.6.1.4.1.32473.2.2.4.0",
            "1.3.6.1.4.1.32473.2.3.1.1.4.1",
            "1.3.6.1.4.1.32473.2.3.1.1.7.1",
            "1.3.6.1.4.1.32473.2.3.1.1.8.1",
            "1.3.6.1.4.1.32473.2.3.1.1.9.1",
            "1.3.6.1.4.1.32473.2.3.1.1.10.1",
            "1.3.6.1.4.1.32473.2.3.1.1.11.1");

    private final AtomicLong replies = new AtomicLong();
    private final AtomicLong timeouts = new AtomicLong();
    private volatile boolean running = true;

    /** Replies a second over so many seconds. */
    double run(List<DemoDevice> devices, int seconds) throws IOException, InterruptedException {
        List<DemoDevice> asked = devices.stream()
                .filter(d -> d.isAccessPoint() && d.accepts() instanceof DemoCredential.Community)
                .limit(IN_FLIGHT)
                .toList();
        try (Snmp snmp = new Snmp(new DefaultUdpTransportMapping())) {
            snmp.listen();
            for (DemoDevice device : asked) {
                ask(snmp, target(device));
            }
            RoundsBench.pause(2);
            long before = replies.get();
            long began = System.nanoTime();
            RoundsBench.pause(seconds);
            double rate = (replies.get() - before) * 1e9 / (System.nanoTime() - began);
            running = false;
            return rate;
        }
    }

    long timeouts() {
        return timeouts.get();
    }

    private static CommunityTarget<Address> target(DemoDevice device) {
        DemoCredential.Community community = (DemoCredential.Community) device.accepts();
        CommunityTarget<Address> target = new CommunityTarget<>(
                new UdpAddress(device.host() + "/" + device.port()), new OctetString(community.community()));
        target.setVersion(SnmpConstants.version2c);
        target.setTimeout(2_000);
        target.setRetries(0);
        return target;
    }

    private void ask(Snmp snmp, CommunityTarget<Address> target) throws IOException {
        PDU pdu = new PDU();
        pdu.setType(PDU.GET);
        OIDS.forEach(oid -> pdu.add(new VariableBinding(new OID(oid))));
        snmp.send(pdu, target, null, new ResponseListener() {
            @Override
            public <A extends Address> void onResponse(ResponseEvent<A> event) {
                snmp.cancel(event.getRequest(), this);
                (event.getResponse() == null ? timeouts : replies).incrementAndGet();
                if (running) {
                    again(snmp, target);
                }
            }
        });
    }

    private void again(Snmp snmp, CommunityTarget<Address> target) {
        try {
            ask(snmp, target);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
