package org.roundsman.demo.agent;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.roundsman.demo.DemoCredential;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.Faults;

/** Whatever strangers send, an agent answers or is silent, and goes on answering others. */
class ConversationTest {

    private static final Instant NOW = Instant.parse("2026-11-25T10:02:30Z");
    private static final DemoFleet FLEET = DemoFleet.of(250, 11);
    private static final Faults FAULTS = new Faults(FLEET, Clock.fixed(NOW, ZoneOffset.UTC));

    private final AgentState plain = agent(false);
    private final AgentState secure = agent(true);
    private final Shape shape = new ShapeBook().of(FLEET.siteOf(plain.device), plain.device);
    private final Conversation conversation = new Conversation();

    private static AgentState agent(boolean versionThree) {
        return FLEET.devices().stream()
                .filter(d -> d.isAccessPoint() && d.standing().isEmpty())
                .filter(d -> d.accepts() instanceof DemoCredential.User == versionThree)
                .map(d -> new AgentState(FLEET, d, FAULTS))
                .filter(a -> a.look(NOW.toEpochMilli()))
                .findFirst()
                .orElseThrow();
    }

    @Property(tries = 3000)
    void aRequestWithWrongOctetsIsAnsweredOrDropped(
            @ForAll @Size(min = 1, max = 6) List<@IntRange(max = 65_535) Integer> places,
            @ForAll @IntRange(max = 255) int octet)
            throws IOException {
        byte[] good = AgentBenchmark.request(plain.device);
        survives(plain, changed(good, places, octet), good);
    }

    @Property(tries = 3000)
    void aVersionThreeMessageWithWrongOctetsIsAnsweredOrDropped(
            @ForAll @Size(min = 1, max = 4) List<@IntRange(max = 65_535) Integer> places,
            @ForAll @IntRange(max = 255) int octet) {
        byte[] good = discovery(secure.device);
        survives(secure, changed(good, places, octet), good);
    }

    @Property(tries = 1000)
    void noiseIsDropped(@ForAll @Size(max = 200) byte[] noise) throws IOException {
        survives(plain, noise, AgentBenchmark.request(plain.device));
    }

    private void survives(AgentState agent, byte[] bad, byte[] good) {
        if (conversation.hear(agent, shape, bad.clone(), bad.length)) {
            assertThat(conversation.answer().length()).isBetween(10, Limits.MESSAGE_OCTETS + bad.length);
        }
        assertThat(conversation.hear(agent, shape, good, good.length)).isTrue();
    }

    private static byte[] changed(byte[] good, List<Integer> places, int octet) {
        byte[] bad = good.clone();
        places.forEach(place -> bad[place % bad.length] ^= (byte) (octet + place));
        return bad;
    }

    /** The first message of RFC 3414's discovery: no user, no engine, reportable. */
    private static byte[] discovery(DemoDevice device) {
        assertThat(device.accepts()).isInstanceOf(DemoCredential.User.class);
        BerWriter out = new BerWriter(500);
        int end = out.position();
        out.head(Tags.SEQUENCE, end);
        for (int i = 0; i < 3; i++) {
            out.integer(Tags.INTEGER, 7);
        }
        out.head(Tags.GET, end);
        out.string(Tags.OCTET_STRING, new byte[0]);
        out.string(Tags.OCTET_STRING, new byte[0]);
        out.head(Tags.SEQUENCE, end);
        int parameters = out.position();
        for (int i = 0; i < 3; i++) {
            out.string(Tags.OCTET_STRING, new byte[0]);
        }
        out.integer(Tags.INTEGER, 0);
        out.integer(Tags.INTEGER, 0);
        out.string(Tags.OCTET_STRING, new byte[0]);
        out.head(Tags.SEQUENCE, parameters);
        out.head(Tags.OCTET_STRING, parameters);
        int header = out.position();
        out.integer(Tags.INTEGER, 3);
        out.string(Tags.OCTET_STRING, new byte[] {4});
        out.integer(Tags.INTEGER, 1472);
        out.integer(Tags.INTEGER, 4711);
        out.head(Tags.SEQUENCE, header);
        out.integer(Tags.INTEGER, 3);
        out.head(Tags.SEQUENCE, end);
        return Arrays.copyOfRange(out.buffer(), out.position(), out.buffer().length);
    }
}
