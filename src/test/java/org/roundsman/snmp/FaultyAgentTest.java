package org.roundsman.snmp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Outcome;
import org.snmp4j.PDU;
import org.snmp4j.smi.Gauge32;
import org.snmp4j.smi.Integer32;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.VariableBinding;

/** Agents that break the rules of RFC 3416, and networks that lose datagrams. */
class FaultyAgentTest {

    private static final String PROCESSOR_LOAD = "1.3.6.1.2.1.25.3.3.1.2.";

    private FakeAgent agent;
    private SnmpVisitor visitor;

    @BeforeEach
    void open() throws IOException {
        agent = new FakeAgent().asDevice("1.3.6.1.4.1.32473.99");
        visitor = SnmpVisitor.open(
                new SnmpSettings(Duration.ofMillis(300), 1, Duration.ofHours(1), 20_000, 2),
                ProfileSet.load(List.of()),
                Clock.systemUTC());
    }

    @AfterEach
    void close() {
        visitor.close();
        agent.close();
    }

    private Visit visit(DeviceMemory memory) {
        return visit(memory, VisitKind.ROUND);
    }

    private Visit visit(DeviceMemory memory, VisitKind kind) {
        return visitor.visit(memory, kind).orTimeout(60, TimeUnit.SECONDS).join();
    }

    private DeviceMemory device() {
        return new DeviceMemory(agent.asV2());
    }

    @Test
    void octetsThatAreNoMessageAreAnOutcomeOfTheirOwn() {
        agent.behaving((request, honest, encoding) -> List.of("hello".getBytes(), new byte[] {0x30, (byte) 0x84, 1}));
        Visit visit = visit(device());
        assertThat(visit.outcome()).isEqualTo(Outcome.UNREADABLE_REPLY);
        assertThat(visit.timeouts()).isEqualTo(2);
        assertThat(visit.remarks()).containsExactly("a reply that is no SNMP message was ignored");
    }

    @Test
    void aReplyCutShortIsUnreadable() {
        agent.behaving((request, honest, encoding) -> {
            byte[] whole = encoding.of(honest.get());
            whole[whole.length - 30] = (byte) 0xff;
            return List.of(whole);
        });
        Visit visit = visit(device());
        assertThat(visit.outcome()).isEqualTo(Outcome.UNREADABLE_REPLY);
        assertThat(visit.remarks()).singleElement().asString().startsWith("a reply could not be read");
    }

    @Test
    void aMalformedReplyBeforeTheGoodOneDoesNoHarm() {
        agent.behaving((request, honest, encoding) -> {
            byte[] broken = encoding.of(honest.get());
            broken[broken.length - 30] = (byte) 0xff;
            return List.of(new byte[65_000], broken, encoding.of(honest.get()));
        });
        assertThat(visit(device()).outcome()).isEqualTo(Outcome.ANSWERED);
    }

    @Test
    void repliesToAnotherRequestAreIgnored() {
        agent.behaving((request, honest, encoding) -> {
            PDU reply = honest.get();
            reply.setRequestID(new Integer32(request.getRequestID().getValue() ^ 0x55));
            return List.of(encoding.of(reply));
        });
        Visit visit = visit(device());
        assertThat(visit.outcome()).isEqualTo(Outcome.UNREADABLE_REPLY);
        assertThat(visit.remarks()).containsExactly("a reply with a number that was not asked for was ignored");
        agent.honest();
        assertThat(visit(device()).outcome()).isEqualTo(Outcome.ANSWERED);
    }

    @Test
    void anOversizedTextIsCut() {
        agent.with("1.3.6.1.2.1.1.5.0", new OctetString(new byte[20_000]));
        Visit visit = visit(device());
        assertThat(visit.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(visit.facts().orElseThrow().values().get(Fact.NAME)).hasSizeLessThanOrEqualTo(513);
    }

    @Test
    void anAgentThatDoesNotAdvanceEndsItsTable() {
        agent.with(PROCESSOR_LOAD + "1", new Integer32(20)).with(PROCESSOR_LOAD + "2", new Integer32(40));
        agent.behaving((request, honest, encoding) -> {
            PDU reply = honest.get();
            if (request.getType() != PDU.GET) {
                // Whatever comes after: the second row again, and for ever.
                for (int i = 0; i < reply.size(); i++) {
                    if (reply.get(i).getOid().compareTo(new OID(PROCESSOR_LOAD + "2")) > 0) {
                        reply.set(i, new VariableBinding(new OID(PROCESSOR_LOAD + "2"), new Integer32(40)));
                    }
                }
            }
            return List.of(encoding.of(reply));
        });
        Visit visit = visit(device());
        assertThat(visit.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(visit.remarks()).anyMatch(r -> r.contains("does not advance"));
        assertThat(visit.requests()).isLessThan(20);
        assertThat(visit.device().get(Metric.CPU)).hasValue(30);
    }

    @Test
    void anAgentThatGoesBackEndsItsTable() {
        for (int i = 1; i <= 30; i++) {
            agent.with(PROCESSOR_LOAD + i, new Integer32(50));
        }
        agent.behaving((request, honest, encoding) -> {
            PDU reply = honest.get();
            OID asked = request.size() == 0 ? null : request.get(0).getOid();
            if (request.getType() == PDU.GETBULK && asked.startsWith(new OID(PROCESSOR_LOAD + "8"))) {
                reply.set(0, new VariableBinding(new OID(PROCESSOR_LOAD + "3"), new Integer32(50)));
            }
            return List.of(encoding.of(reply));
        });
        Visit visit = visit(device());
        assertThat(visit.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(visit.device().get(Metric.CPU)).hasValue(50);
        assertThat(visit.requests()).isLessThan(20);
    }

    @Test
    void tenThousandRowsAreReadToTheirEnd() {
        for (int i = 1; i <= 10_000; i++) {
            agent.with(PROCESSOR_LOAD + i, new Integer32(i % 2 == 0 ? 10 : 30));
        }
        DeviceMemory memory = device();
        assertThat(visit(memory).device().get(Metric.CPU)).hasValue(20);
        Visit second = visit(memory);
        assertThat(second.device().get(Metric.CPU)).hasValue(20);
        assertThat(second.timeouts()).isZero();
    }

    @Test
    void aTableWithoutEndIsCutWithARemark() throws IOException {
        for (int i = 1; i <= 600; i++) {
            agent.with(PROCESSOR_LOAD + i, new Integer32(30));
        }
        SnmpSettings few = new SnmpSettings(Duration.ofSeconds(1), 1, Duration.ofHours(1), 500, 1);
        try (SnmpVisitor careful = SnmpVisitor.open(few, ProfileSet.load(List.of()), Clock.systemUTC())) {
            Visit visit = careful.visit(device(), VisitKind.ROUND).join();
            assertThat(visit.remarks()).anyMatch(r -> r.contains("more than 500 rows; the rest was not read"));
            assertThat(visit.device().get(Metric.CPU)).hasValue(30);
        }
    }

    /** RFC 3416 section 4.2.1: tooBig carries no variables; asking for less is the manager's business. */
    @Test
    void tooBigIsAnsweredBySmallerGetsAndRemembered() {
        agent.mostVariables = 5;
        for (int i = 1; i <= 20; i++) {
            agent.with(PROCESSOR_LOAD + i, new Integer32(30));
        }
        DeviceMemory memory = device();
        assertThat(visit(memory).device().get(Metric.CPU)).hasValue(30);
        agent.heard.clear();
        Visit second = visit(memory);
        assertThat(second.device().get(Metric.CPU)).hasValue(30);
        assertThat(agent.heard).allMatch(request -> request.size() <= 5);
    }

    /** RFC 1157 section 4.1.2: one name that is lacking refuses the whole Get. */
    @Test
    void anSnmpV1AgentIsNotAskedTwiceForWhatItLacks() {
        agent.with(PROCESSOR_LOAD + "1", new Integer32(20)).with(PROCESSOR_LOAD + "9", new Integer32(40));
        DeviceMemory memory = new DeviceMemory(agent.asV1());
        Visit first = visit(memory);
        assertThat(first.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(first.facts().orElseThrow().values()).containsEntry(Fact.NAME, "ap-1");
        assertThat(first.device().get(Metric.CPU)).hasValue(30);
        assertThat(agent.heard).noneMatch(request -> request.getType() == PDU.GETBULK);
        Visit second = visit(memory);
        assertThat(second.requests()).isEqualTo(1);
        assertThat(second.device().get(Metric.CPU)).hasValue(30);
    }

    @Test
    void anErrorAtOneVariableCostsOnlyThatOne() {
        agent.with(PROCESSOR_LOAD + "1", new Integer32(20));
        DeviceMemory memory = device();
        visit(memory);
        agent.behaving((request, honest, encoding) -> {
            PDU reply = honest.get();
            for (int i = 0; i < request.size(); i++) {
                if (request.get(i).getOid().equals(new OID(PROCESSOR_LOAD + "1"))) {
                    reply.setErrorStatus(PDU.genErr);
                    reply.setErrorIndex(i + 1);
                }
            }
            return List.of(encoding.of(reply));
        });
        Visit visit = visit(memory);
        assertThat(visit.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(visit.device().has(Metric.CPU)).isFalse();
        assertThat(visit.device().has(Metric.UPTIME)).isTrue();
        assertThat(visit.remarks()).anyMatch(r -> r.contains("has an error at " + PROCESSOR_LOAD + "1"));
    }

    @Test
    void anAgentThatRefusesEverythingDeniesAccess() {
        agent.behaving((request, honest, encoding) -> {
            PDU reply = honest.get();
            reply.setErrorStatus(PDU.authorizationError);
            return List.of(encoding.of(reply));
        });
        assertThat(visit(device()).outcome()).isEqualTo(Outcome.ACCESS_DENIED);
    }

    /** Three lost rounds in a row make a device silent; with five tries each, 30 % loss hardly ever loses one. */
    @Test
    void lossOfThirtyPerCentLosesNoThreeRoundsInARow() throws IOException {
        Random random = new Random(32473);
        agent.behaving((request, honest, encoding) ->
                random.nextInt(100) < 30 ? List.of() : List.of(encoding.of(honest.get())));
        SnmpSettings patient = new SnmpSettings(Duration.ofMillis(60), 4, Duration.ofHours(1), 100, 1);
        try (SnmpVisitor other = SnmpVisitor.open(patient, ProfileSet.load(List.of()), Clock.systemUTC())) {
            DeviceMemory memory = device();
            List<Outcome> outcomes = new ArrayList<>();
            int timeouts = 0;
            for (int i = 0; i < 100; i++) {
                Visit visit = other.visit(memory, VisitKind.ROUND).join();
                outcomes.add(visit.outcome());
                timeouts += visit.timeouts();
            }
            assertThat(timeouts).as("datagrams really were lost").isGreaterThan(20);
            for (int i = 2; i < outcomes.size(); i++) {
                assertThat(outcomes.subList(i - 2, i + 1)).contains(Outcome.ANSWERED);
            }
        }
    }

    @Test
    void aLateReplyToAnEarlierTryCounts() {
        List<PDU> seen = new ArrayList<>();
        agent.behaving((request, honest, encoding) -> {
            seen.add(request);
            if (seen.size() == 1) {
                return List.of();
            }
            PDU late = honest.get();
            late.setRequestID(seen.get(0).getRequestID());
            return seen.size() == 2 ? List.of(encoding.of(late)) : List.of(encoding.of(honest.get()));
        });
        Visit visit = visit(device());
        assertThat(visit.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(visit.timeouts()).isEqualTo(1);
    }

    @Test
    void silenceAfterTheFirstReplyKeepsWhatWasAnswered() {
        agent.behaving((request, honest, encoding) ->
                agent.heard.size() == 1 ? List.of(encoding.of(honest.get())) : List.of());
        Visit visit = visit(device());
        assertThat(visit.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(visit.device().get(Metric.UPTIME).orElseThrow()).isEqualTo(1_000, within(0.01));
        assertThat(visit.facts()).as("half a survey gives no facts").isEmpty();
        assertThat(visit.remarks()).anyMatch(r -> r.startsWith("a later request of the visit failed: no reply"));
    }

    @Test
    void aSilentDeviceIsAskedOneSmallGet() {
        DeviceMemory memory = device();
        visit(memory);
        agent.heard.clear();
        agent.behaving((request, honest, encoding) -> List.of());
        assertThat(visit(memory, VisitKind.PROBE).outcome()).isEqualTo(Outcome.NO_REPLY);
        assertThat(agent.heard).hasSize(2).allMatch(request -> request.size() == 1);
        agent.honest();
        Visit back = visit(memory, VisitKind.PROBE);
        assertThat(back.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(back.requests()).isEqualTo(2);
    }

    @Test
    void aClosedPortIsTold() {
        DeviceMemory memory = device();
        agent.close();
        assertThat(visit(memory).outcome()).isEqualTo(Outcome.PORT_CLOSED);
    }

    /** The TLD example never resolves (RFC 2606). */
    @Test
    void aNameWithoutAddressIsTold() {
        Agent nowhere = new Agent("ap.nowhere.example", 161, new SnmpAccess.Community(2, "lantern"));
        Visit visit = visit(new DeviceMemory(nowhere));
        assertThat(visit.outcome()).isEqualTo(Outcome.ADDRESS_UNKNOWN);
        assertThat(visit.requests()).isZero();
    }

    @Test
    void closingCancelsWhatIsUnderWay() {
        agent.behaving((request, honest, encoding) -> List.of());
        var visit = visitor.visit(device(), VisitKind.ROUND);
        visitor.close();
        assertThat(visit).isCancelled();
    }

    @Test
    void valuesOutOfRangeAreDroppedWithARemark() {
        agent.with(PROCESSOR_LOAD + "1", new Gauge32(4_000_000_000L));
        Visit visit = visit(device());
        assertThat(visit.device().has(Metric.CPU)).isFalse();
        assertThat(visit.remarks()).containsExactly("device: device.cpu of 4.0E9 is out of range and was dropped");
    }
}
