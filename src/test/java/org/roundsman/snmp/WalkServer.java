package org.roundsman.snmp;

import java.io.IOException;
import org.roundsman.snmp.walk.WalkAgent;
import org.snmp4j.CommandResponder;
import org.snmp4j.CommandResponderEvent;
import org.snmp4j.MessageDispatcherImpl;
import org.snmp4j.MessageException;
import org.snmp4j.PDU;
import org.snmp4j.Snmp;
import org.snmp4j.mp.MPv2c;
import org.snmp4j.mp.StatusInformation;
import org.snmp4j.smi.Address;
import org.snmp4j.smi.UdpAddress;
import org.snmp4j.transport.DefaultUdpTransportMapping;

/** Serves a walk over UDP by the SNMP library's own messages, so that others can ask it. */
public final class WalkServer implements CommandResponder, AutoCloseable {

    public static final String HOST = "127.0.7.21";

    private final WalkAgent agent;
    private final Snmp snmp;
    private final DefaultUdpTransportMapping transport;

    public WalkServer(Walk walk) throws IOException {
        agent = new WalkAgent(walk);
        transport = new DefaultUdpTransportMapping(new UdpAddress(HOST + "/0"), true);
        snmp = new Snmp(new MessageDispatcherImpl(), transport);
        snmp.getMessageDispatcher().addMessageProcessingModel(new MPv2c());
        snmp.addCommandResponder(this);
        snmp.listen();
    }

    public int port() {
        return transport.getListenAddress().getPort();
    }

    @Override
    public <A extends Address> void processPdu(CommandResponderEvent<A> event) {
        PDU reply = agent.answer(event.getPDU());
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
