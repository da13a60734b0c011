package org.roundsman.traps;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.snmp.EngineIdentity;
import org.roundsman.testing.TestDatabase;

/** SnmpEngineID and snmpEngineBoots as RFC 3411 section 5 and RFC 3414 section 2.2.2 want them. */
class OwnEngineDbTest {

    @Test
    void theIdentityStaysAndBootsCountTheStarts() throws SQLException {
        DataSource database = TestDatabase.fresh("own_engine");
        EngineIdentity first = OwnEngine.begin(database);
        EngineIdentity second = OwnEngine.begin(database);
        assertThat(second.id()).isEqualTo(first.id());
        assertThat(first.boots()).isEqualTo(1);
        assertThat(second.boots()).isEqualTo(2);
    }

    /** First bit 1; four octets with the enterprise number (32473, RFC 5612); format 5, octets; then the octets. */
    @Test
    void theIdentityHasTheFormOfRfc3411() throws SQLException {
        byte[] id = OwnEngine.begin(TestDatabase.fresh("own_engine_form")).id();
        assertThat(id).hasSizeBetween(5, 32).startsWith(0x80, 0x00, 0x7e, 0xd9, 0x05);
    }

    @Test
    void bootsNeverReachTheirEndButWithAnotherIdentity() throws SQLException {
        DataSource database = TestDatabase.fresh("own_engine_end");
        EngineIdentity first = OwnEngine.begin(database);
        new ReadingsFixture(database).run("update own_engine set boots = 2147483646");
        EngineIdentity next = OwnEngine.begin(database);
        assertThat(next.boots()).isEqualTo(1);
        assertThat(next.id()).isNotEqualTo(first.id());
    }
}
