package org.roundsman.rules.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.HashMap;
import java.util.Map;
import javax.sql.DataSource;
import org.roundsman.rules.fold.Memory;
import org.roundsman.system.StorableText;
import org.roundsman.system.Transaction;

/** What rules remember of devices for ever. Thread-safe. */
@ApplicationScoped
public class MemoryTable {

    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String WRITE =
            "insert into rule_memory (device_id, fastest_mbit, radios, serial) select id, ?, ?::jsonb, ? from device"
                    + " where id = ? on conflict (device_id) do update set fastest_mbit = excluded.fastest_mbit,"
                    + " radios = excluded.radios, serial = excluded.serial";

    private final DataSource database;

    @Inject
    public MemoryTable(DataSource database) {
        this.database = database;
    }

    /** By device; one that nothing is remembered of has no entry. */
    public Map<Long, Memory> all() {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement("select * from rule_memory");
                ResultSet row = statement.executeQuery()) {
            Map<Long, Memory> all = new HashMap<>();
            while (row.next()) {
                double fastest = row.getDouble("fastest_mbit");
                boolean none = row.wasNull();
                all.put(
                        row.getLong("device_id"),
                        new Memory(
                                none ? Double.NaN : fastest, radios(row.getString("radios")), row.getString("serial")));
            }
            return all;
        } catch (SQLException | JsonProcessingException e) {
            throw new IllegalStateException("What rules remember could not be read: " + e.getMessage(), e);
        }
    }

    /** Writes all of it or nothing; what is of a device that is gone is left out. */
    public void save(Map<Long, Memory> memories) {
        try {
            Transaction.run(database, connection -> {
                write(connection, memories);
                return null;
            });
        } catch (SQLException e) {
            throw new IllegalStateException("What rules remember could not be written: " + e.getMessage(), e);
        }
    }

    private static void write(Connection connection, Map<Long, Memory> memories) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(WRITE)) {
            for (Map.Entry<Long, Memory> entry : memories.entrySet()) {
                Memory memory = entry.getValue();
                if (Double.isNaN(memory.fastest())) {
                    statement.setNull(1, Types.REAL);
                } else {
                    statement.setDouble(1, memory.fastest());
                }
                statement.setString(2, json(memory.radios()));
                statement.setString(3, StorableText.of(memory.serial()));
                statement.setLong(4, entry.getKey());
                statement.addBatch();
            }
            statement.executeBatch();
        }
    }

    private static String json(Map<Integer, Integer> radios) {
        try {
            return JSON.writeValueAsString(radios);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e); // a map of numbers
        }
    }

    private static Map<Integer, Integer> radios(String json) throws JsonProcessingException {
        return JSON.readValue(json, new TypeReference<Map<Integer, Integer>>() {});
    }
}
