package org.roundsman.demo.agent;

import java.util.Arrays;
import org.roundsman.demo.agent.BerReader.Malformed;

/** Turns a datagram into the datagram that answers it, or into silence. One thread at a time. */
final class Conversation {

    private static final int VERSION_ONE = 0;
    private static final int VERSION_TWO = 1;
    private static final int VERSION_THREE = 3;
    private static final int HEADS = 16;

    private final BerReader in = new BerReader();
    private final BerWriter out = new BerWriter(2 * Limits.REQUEST_OCTETS);
    private final PduAnswer pdus = new PduAnswer();
    private final SecureConversation secure = new SecureConversation(in, out, pdus);

    /** The buffer of the answer: from {@link BerWriter#position()} to its end. */
    BerWriter answer() {
        return out;
    }

    /**
     * Reads a request and leaves its answer in {@link #answer()}.
     *
     * @return false for silence: a wrong community, a fault that keeps askers out, or no request at all
     */
    boolean hear(AgentState agent, Shape shape, byte[] request, int length) {
        out.clear();
        try {
            in.over(request, 0, length);
            in.head(Tags.SEQUENCE);
            int version = in.integer();
            return switch (version) {
                case VERSION_ONE, VERSION_TWO -> plain(agent, new View(agent, shape, version == VERSION_ONE), version);
                case VERSION_THREE -> secure.hear(agent, new View(agent, shape, false));
                default -> false;
            };
        } catch (Malformed stranger) {
            // an agent drops what it cannot read (RFC 3417 asks for no answer)
            return false;
        }
    }

    private boolean plain(AgentState agent, View view, int version) throws Malformed {
        int end = in.head(Tags.OCTET_STRING);
        int from = in.position();
        byte[] community = agent.community;
        if (community == null
                || agent.keepsOut()
                || !Arrays.equals(in.buffer(), from, end, community, 0, community.length)) {
            return false;
        }
        in.skipTo(end);
        int start = out.position();
        int room = Limits.MESSAGE_OCTETS - HEADS - community.length;
        if (!pdus.answer(in, out, view, room, 0)) {
            return false;
        }
        out.string(Tags.OCTET_STRING, community);
        out.integer(Tags.INTEGER, version);
        out.head(Tags.SEQUENCE, start);
        return true;
    }
}
