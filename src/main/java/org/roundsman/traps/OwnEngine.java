package org.roundsman.traps;

import java.nio.ByteBuffer;
import java.security.SecureRandom;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.roundsman.snmp.EngineIdentity;

/** Our own SNMP engine: an identity that stays, and a count of starts (RFC 3411, RFC 3414 section 2.2). */
final class OwnEngine {

    /** First octets of an engine ID in the form of RFC 3411: enterprise 32473 with the highest bit set, then form 5, octets. */
    private static final int ENTERPRISE = 0x8000_0000 | 32_473;

    private static final byte OCTETS_FORM = 5;
    private static final int RANDOM_OCTETS = 8;

    private OwnEngine() {}

    /**
     * Begins another run of the engine: boots are one more than before. Should they ever reach their end, the identity is
     * a new one, as RFC 3414 section 2.2.2 wants it.
     */
    static EngineIdentity begin(DataSource database) throws SQLException {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(
                        "insert into own_engine as o (engine_id, boots) values (?, 1) on conflict (one) do update set"
                                + " boots = case when o.boots < 2147483646 then o.boots + 1 else 1 end,"
                                + " engine_id = case when o.boots < 2147483646 then o.engine_id else excluded.engine_id"
                                + " end returning engine_id, boots")) {
            statement.setBytes(1, fresh());
            try (ResultSet row = statement.executeQuery()) {
                row.next();
                return new EngineIdentity(row.getBytes(1), row.getInt(2));
            }
        }
    }

    private static byte[] fresh() {
        byte[] random = new byte[RANDOM_OCTETS];
        new SecureRandom().nextBytes(random);
        return ByteBuffer.allocate(Integer.BYTES + 1 + RANDOM_OCTETS)
                .putInt(ENTERPRISE)
                .put(OCTETS_FORM)
                .put(random)
                .array();
    }
}
