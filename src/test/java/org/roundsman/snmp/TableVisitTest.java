package org.roundsman.snmp;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.measure.Outcome;
import org.snmp4j.PDU;
import org.snmp4j.smi.Counter64;
import org.snmp4j.smi.Integer32;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;

/** Tables are read as rows: numbers of IF-MIB (RFC 2863) and BRIDGE-MIB (RFC 4188). */
class TableVisitTest {

    private static final TableQuestion FORWARDING = TableQuestion.of("1.3.6.1.2.1.17.4.3.1", 2, 3);
    private static final TableQuestion PORTS = TableQuestion.of("1.3.6.1.2.1.17.1.4.1", 2);
    private static final TableQuestion SYSTEM = TableQuestion.of("1.3.6.1.2.1.1", 3, 5);

    private FakeAgent agent;
    private SnmpVisitor visitor;

    @BeforeEach
    void open() throws IOException {
        agent = new FakeAgent().asDevice("1.3.6.1.4.1.32473.1.9");
        SnmpSettings settings = new SnmpSettings(Duration.ofMillis(250), 1, Duration.ofHours(1), 20_000, 1);
        visitor = SnmpVisitor.open(settings, ProfileSet.load(List.of()), Clock.systemUTC());
    }

    @AfterEach
    void close() {
        visitor.close();
        agent.close();
    }

    private void learnt(int count) {
        for (int i = 0; i < count; i++) {
            String index = "0.0.94.0.83." + i;
            agent.with("1.3.6.1.2.1.17.4.3.1.2." + index, new Integer32(1 + i % 24));
            agent.with("1.3.6.1.2.1.17.4.3.1.3." + index, new Integer32(3));
        }
    }

    private TableReading read(Agent as, int maxRows, TableQuestion... questions) {
        return visitor.tables(new DeviceMemory(as), List.of(questions), maxRows).join();
    }

    @Test
    void rowsHaveTheirIndexAndTheirColumns() {
        learnt(200);
        agent.with("1.3.6.1.2.1.17.1.4.1.2.7", new Integer32(10_007));
        TableReading reading = read(agent.asV2(), 1_000, SYSTEM, PORTS, FORWARDING);
        assertThat(reading.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(reading.table(SYSTEM.entry()).rows().get(0).text(5)).isEqualTo("ap-1");
        TableRow port = reading.table(PORTS.entry()).rows().get(0);
        assertThat(port.index()).containsExactly(7L);
        assertThat(port.number(2)).hasValue(10_007);
        ReadTable forwarding = reading.table(FORWARDING.entry());
        assertThat(forwarding.complete()).isTrue();
        assertThat(forwarding.rows()).hasSize(200);
        TableRow tenth = forwarding.rows().get(10);
        assertThat(tenth.macInIndex(0)).isEqualTo("00:00:5e:00:53:0a");
        assertThat(tenth.number(2)).hasValue(11);
    }

    /** 200 rows of two columns by GetBulk within one datagram each: far fewer requests than rows. */
    @Test
    void manyRowsComeWithEachRequestAndNoReplyOutgrowsADatagram() {
        learnt(200);
        TableReading reading = read(agent.asV2(), 1_000, FORWARDING);
        assertThat(reading.requests()).isLessThan(25);
        assertThat(agent.replySizes).allMatch(size -> size <= 1_472);
        assertThat(agent.heard).anyMatch(pdu -> pdu.getType() == PDU.GETBULK);
    }

    @Test
    void versionOneIsReadRowByRow() {
        learnt(5);
        TableReading reading = read(agent.asV1(), 1_000, FORWARDING);
        assertThat(reading.table(FORWARDING.entry()).rows()).hasSize(5);
        assertThat(reading.table(FORWARDING.entry()).complete()).isTrue();
        assertThat(agent.heard).allMatch(pdu -> pdu.getType() == PDU.GETNEXT);
    }

    @Test
    void aTableBeyondTheBoundIsCutWithARemark() {
        learnt(200);
        TableReading reading = read(agent.asV2(), 50, FORWARDING);
        assertThat(reading.table(FORWARDING.entry()).rows()).hasSize(50);
        assertThat(reading.table(FORWARDING.entry()).complete()).isFalse();
        assertThat(reading.remarks()).anyMatch(remark -> remark.contains("more than 50 rows"));
    }

    @Test
    void aTableThatIsNotThereIsEmptyAndComplete() {
        TableReading reading = read(agent.asV2(), 100, FORWARDING);
        assertThat(reading.table(FORWARDING.entry()).rows()).isEmpty();
        assertThat(reading.table(FORWARDING.entry()).complete()).isTrue();
    }

    @Test
    void silenceIsAnOutcomeAndEndsTheReading() {
        agent.behaving((request, honest, encoding) -> List.of());
        TableReading reading = read(agent.asV2(), 100, SYSTEM, FORWARDING);
        assertThat(reading.outcome()).isEqualTo(Outcome.NO_REPLY);
        assertThat(reading.tables()).hasSize(2).noneMatch(ReadTable::complete);
        assertThat(reading.requests()).isEqualTo(2);
    }

    @Test
    void anAgentThatGoesBackwardsIsNotReadForEver() {
        agent.behaving((request, honest, encoding) -> {
            PDU reply = honest.get();
            reply.getVariableBindings().forEach(binding -> {
                if (binding.getOid().startsWith(new OID("1.3.6.1.2.1.17.4.3.1.2"))) {
                    binding.setOid(new OID("1.3.6.1.2.1.17.4.3.1.2.0.0.94.0.83.1"));
                }
            });
            return List.of(encoding.of(reply));
        });
        learnt(20);
        TableReading reading = read(agent.asV2(), 100, FORWARDING);
        assertThat(reading.table(FORWARDING.entry()).complete()).isFalse();
        assertThat(reading.remarks()).anyMatch(remark -> remark.contains("does not advance"));
    }

    @Test
    void valuesKeepTheirKind() {
        agent.with("1.3.6.1.2.1.31.1.1.1.1.3", new OctetString("ge-0/0/3"));
        agent.with("1.3.6.1.2.1.31.1.1.1.6.3", new Counter64(5_000_000_000L));
        TableReading reading = read(agent.asV2(), 100, TableQuestion.of("1.3.6.1.2.1.31.1.1.1", 1, 6, 15));
        TableRow row = reading.tables().get(0).rows().get(0);
        assertThat(row.text(1)).isEqualTo("ge-0/0/3");
        assertThat(row.wide(6)).isEqualTo(5_000_000_000L);
        assertThat(row.number(6)).isEmpty();
        assertThat(row.number(15)).isEmpty();
        assertThat(row.octets(15)).isEmpty();
    }
}
