package org.roundsman.demo.agent;

import java.util.Arrays;
import java.util.List;
import org.roundsman.demo.DemoDevice;

/**
 * Writes a notice as a datagram: a v3 trap by the user whom the device's agent lets in, else a trap of version 1 or 2
 * with its community. One thread at a time.
 */
final class NoticeWriter {

    private static final int VERSION_ONE = 0;
    private static final int VERSION_TWO = 1;
    private static final String UP_TIME = "1.3.6.1.2.1.1.3.0";
    private static final String TRAP_NAME = "1.3.6.1.6.3.1.1.4.1.0";
    private static final int OLD_SITE_OF = 4;

    private final BerWriter out = new BerWriter(Limits.MESSAGE_OCTETS);
    private final SecureEnvelope envelope = new SecureEnvelope(out, new Seals());
    private int ids = (int) (System.nanoTime() & 0xFFFFFF);

    /** Whether the devices of its site speak version 1 when they tell something: those of one site in four do. */
    static boolean speaksVersionOne(DemoDevice device) {
        return device.site() % OLD_SITE_OF == 3;
    }

    byte[] write(AgentState agent, Notice notice) {
        out.clear();
        int start = out.position();
        if (agent.usm.userName() != null) {
            trap(agent, notice, start);
            int level = SecureEnvelope.AUTH | SecureEnvelope.PRIV;
            envelope.wrap(agent, start, level, ++ids, agent.usm.userName());
        } else {
            boolean old = speaksVersionOne(agent.device);
            if (old) {
                oldTrap(agent, notice, start);
            } else {
                trap(agent, notice, start);
            }
            out.string(Tags.OCTET_STRING, agent.community);
            out.integer(Tags.INTEGER, old ? VERSION_ONE : VERSION_TWO);
            out.head(Tags.SEQUENCE, start);
        }
        return Arrays.copyOfRange(out.buffer(), out.position(), out.buffer().length);
    }

    /** SNMPv2-Trap-PDU (RFC 3416, 4.2.6): the time and the name come first. */
    private void trap(AgentState agent, Notice notice, int start) {
        variables(agent, notice.variables());
        variable(agent, new Notice.Variable(TRAP_NAME, (s, o) -> SystemObjects.objectId(o, notice.name())));
        variable(agent, new Notice.Variable(UP_TIME, (s, o) -> o.unsigned32(Tags.TIME_TICKS, s.upMillis() / 10)));
        out.head(Tags.SEQUENCE, start);
        out.integer(Tags.INTEGER, 0);
        out.integer(Tags.INTEGER, 0);
        out.integer(Tags.INTEGER, ++ids);
        out.head(Tags.TRAP, start);
    }

    /** Trap-PDU of version 1 (RFC 1157, 4.1.6). */
    private void oldTrap(AgentState agent, Notice notice, int start) {
        variables(agent, notice.variables());
        out.head(Tags.SEQUENCE, start);
        out.unsigned32(Tags.TIME_TICKS, agent.upMillis() / 10);
        out.integer(Tags.INTEGER, notice.specific());
        out.integer(Tags.INTEGER, notice.generic());
        out.string(Tags.IP_ADDRESS, LldpIdentity.address(agent.device));
        String enterprise =
                notice.specific() > 0 ? Notice.MAKER : agent.device.model().objectId();
        SystemObjects.objectId(out, enterprise);
        out.head(Tags.TRAP_OF_VERSION_ONE, start);
    }

    private void variables(AgentState agent, List<Notice.Variable> variables) {
        for (int i = variables.size() - 1; i >= 0; i--) {
            variable(agent, variables.get(i));
        }
    }

    private void variable(AgentState agent, Notice.Variable variable) {
        int start = out.position();
        variable.value().write(agent, out);
        SystemObjects.objectId(out, variable.name());
        out.head(Tags.SEQUENCE, start);
    }
}
