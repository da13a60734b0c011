package org.roundsman.snmp;

import java.io.IOException;
import java.util.HexFormat;
import java.util.Map;
import org.roundsman.snmp.SnmpAccess.User;
import org.snmp4j.CommandResponder;
import org.snmp4j.CommandResponderEvent;
import org.snmp4j.MessageDispatcherImpl;
import org.snmp4j.MessageException;
import org.snmp4j.PDU;
import org.snmp4j.Snmp;
import org.snmp4j.mp.MPv3;
import org.snmp4j.mp.StatusInformation;
import org.snmp4j.security.AuthHMAC128SHA224;
import org.snmp4j.security.AuthHMAC192SHA256;
import org.snmp4j.security.AuthHMAC256SHA384;
import org.snmp4j.security.AuthHMAC384SHA512;
import org.snmp4j.security.AuthSHA;
import org.snmp4j.security.PrivAES128;
import org.snmp4j.security.PrivAES192;
import org.snmp4j.security.PrivAES256;
import org.snmp4j.security.SecurityProtocols;
import org.snmp4j.security.USM;
import org.snmp4j.security.UsmUser;
import org.snmp4j.smi.Address;
import org.snmp4j.smi.Null;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.TimeTicks;
import org.snmp4j.smi.UdpAddress;
import org.snmp4j.smi.Variable;
import org.snmp4j.smi.VariableBinding;
import org.snmp4j.transport.DefaultUdpTransportMapping;

/** An SNMPv3 agent that is the SNMP library's own: its security model, its messages. Answers Get only. */
final class LibraryAgent implements CommandResponder, AutoCloseable {

    static final String HOST = "127.0.7.3";
    private static final OID[] AUTH = {
        AuthSHA.ID, AuthHMAC128SHA224.ID, AuthHMAC192SHA256.ID, AuthHMAC256SHA384.ID, AuthHMAC384SHA512.ID
    };
    private static final OID[] PRIV = {PrivAES128.ID, PrivAES192.ID, PrivAES256.ID};

    private final Map<OID, Variable> objects = Map.of(
            new OID("1.3.6.1.2.1.1.3.0"),
            new TimeTicks(5_000),
            new OID("1.3.6.1.2.1.1.5.0"),
            new OctetString("library"));
    private final Snmp snmp;
    private final DefaultUdpTransportMapping transport;

    /** @param port 0 for any free one */
    LibraryAgent(int port, String engineId, int boots, User user) throws IOException {
        SecurityProtocols protocols = new SecurityProtocols(SecurityProtocols.SecurityProtocolSet.maxCompatibility);
        OctetString engine = new OctetString(HexFormat.of().parseHex(engineId));
        USM usm = new USM(protocols, engine, boots);
        usm.addUser(new UsmUser(
                new OctetString(user.name()),
                user.auth() == null ? null : AUTH[user.auth().ordinal()],
                user.auth() == null ? null : new OctetString(user.authPassword()),
                user.priv() == null ? null : PRIV[user.priv().ordinal()],
                user.priv() == null ? null : new OctetString(user.privPassword())));
        transport = new DefaultUdpTransportMapping(new UdpAddress(HOST + "/" + port), true);
        snmp = new Snmp(new MessageDispatcherImpl(), transport);
        snmp.getMessageDispatcher().addMessageProcessingModel(new MPv3(usm));
        snmp.addCommandResponder(this);
        snmp.listen();
    }

    int port() {
        return transport.getListenAddress().getPort();
    }

    Agent as(User user) {
        return new Agent(HOST, port(), user);
    }

    @Override
    public <A extends Address> void processPdu(CommandResponderEvent<A> event) {
        PDU pdu = event.getPDU();
        PDU reply = (PDU) pdu.clone();
        reply.setType(PDU.RESPONSE);
        for (int i = 0; i < pdu.size(); i++) {
            OID oid = pdu.get(i).getOid();
            boolean get = pdu.getType() == PDU.GET;
            Variable value = get ? objects.getOrDefault(oid, Null.noSuchObject) : Null.endOfMibView;
            reply.set(i, new VariableBinding(oid, value));
        }
        reply.setErrorIndex(0);
        reply.setErrorStatus(PDU.noError);
        try {
            event.getMessageDispatcher()
                    .returnResponsePdu(
                            event.getMessageProcessingModel(),
                            event.getSecurityModel(),
                            event.getSecurityName(),
                            event.getSecurityLevel(),
                            reply,
                            event.getMaxSizeResponsePDU(),
                            event.getStateReference(),
                            new StatusInformation());
        } catch (MessageException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void close() throws IOException {
        snmp.close();
    }
}
