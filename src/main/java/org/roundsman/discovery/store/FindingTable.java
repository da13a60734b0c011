package org.roundsman.discovery.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.roundsman.discovery.Review;
import org.roundsman.discovery.run.Heard;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Facts;
import org.roundsman.measure.Outcome;
import org.roundsman.system.StorableText;

/** What addresses said, and what people made of it. */
@ApplicationScoped
public class FindingTable {

    private final Tables tables;
    private final ObjectMapper json;

    @Inject
    public FindingTable(Tables tables, ObjectMapper json) {
        this.tables = tables;
        this.json = json;
    }

    /** Facts as the table keeps them: names that a later program does not know are dropped. */
    private record Said(Map<String, String> values, List<Facts.RadioFacts> radios, List<String> networks) {}

    private record Entered(boolean ticked, String name, String kind, String place) {}

    /**
     * Stores what became of addresses, whole or not at all; an address that is stored already stays as it is. Not
     * within a transaction of the container.
     */
    public void store(long sweepId, List<Heard> batch) throws SQLException {
        tables.whole(connection -> {
            try (PreparedStatement statement = connection.prepareStatement(
                    "insert into sweep_address (sweep_id, place, outcome) values (?, ?, ?) on conflict do nothing")) {
                for (Heard heard : batch) {
                    Tables.fill(
                            statement,
                            sweepId,
                            heard.target().place(),
                            heard.outcome().code());
                    statement.addBatch();
                }
                statement.executeBatch();
            }
            storeFindings(
                    connection, sweepId, batch.stream().filter(Heard::isFinding).toList());
            return null;
        });
    }

    /** Marks addresses that are left out, whole or not at all. */
    public void leaveOut(long sweepId, Collection<Integer> places) throws SQLException {
        tables.whole(connection -> {
            try (PreparedStatement statement = connection.prepareStatement(
                    "insert into sweep_address (sweep_id, place, outcome) values (?, ?, ?) on conflict do nothing")) {
                for (int place : places) {
                    Tables.fill(statement, sweepId, place, SweepTable.LEFT_OUT);
                    statement.addBatch();
                }
                statement.executeBatch();
            }
            return null;
        });
    }

    private void storeFindings(Connection connection, long sweepId, List<Heard> findings) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement("insert into sweep_finding (sweep_id, place, host, port, outcome,"
                        + " credential_id, at, uptime_s, profiles, facts, remark)"
                        + " values (?, ?, ?, ?, ?, (select id from credential where id = ?), ?, ?, ?, ?::jsonb, ?)"
                        + " on conflict do nothing")) {
            for (Heard heard : findings) {
                Tables.fill(
                        statement,
                        sweepId,
                        heard.target().place(),
                        heard.target().host(),
                        heard.target().port(),
                        heard.outcome().code(),
                        heard.credentialId(),
                        SweepTable.time(heard.at()));
                if (heard.uptimeSeconds().isPresent()) {
                    statement.setDouble(8, heard.uptimeSeconds().getAsDouble());
                } else {
                    statement.setNull(8, Types.DOUBLE);
                }
                statement.setArray(
                        9, connection.createArrayOf("text", heard.profiles().toArray()));
                statement.setString(10, text(said(heard.facts())));
                statement.setString(11, StorableText.of(heard.remark()));
                statement.addBatch();
            }
            statement.executeBatch();
        }
    }

    private static Said said(Facts facts) {
        Map<String, String> values = new java.util.TreeMap<>();
        facts.values().forEach((fact, value) -> values.put(fact.name(), StorableText.of(value)));
        return new Said(values, facts.radios(), facts.networks());
    }

    /** All that a sweep found, by place. */
    public List<Finding> of(long sweepId) {
        return tables.list("select * from sweep_finding where sweep_id = ? order by place", this::finding, sweepId);
    }

    private Finding finding(ResultSet row) throws SQLException {
        double uptime = row.getDouble("uptime_s");
        OptionalDouble up = row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(uptime);
        OffsetDateTime adopted = row.getObject("adopted_at", OffsetDateTime.class);
        return new Finding(
                row.getLong("id"),
                row.getString("host"),
                row.getInt("port"),
                Outcome.ofCode(row.getInt("outcome")),
                row.getObject("credential_id", Long.class),
                row.getObject("at", OffsetDateTime.class).toInstant(),
                up,
                Tables.texts(row, "profiles"),
                facts(row.getString("facts")),
                row.getString("remark"),
                review(row),
                Optional.ofNullable(adopted).map(OffsetDateTime::toInstant),
                row.getObject("adopted_as", Long.class));
    }

    private Facts facts(String text) {
        Said said = read(text, Said.class);
        Map<Fact, String> values = new EnumMap<>(Fact.class);
        for (Fact fact : Fact.values()) {
            Optional.ofNullable(said.values.get(fact.name())).ifPresent(value -> values.put(fact, value));
        }
        return new Facts(values, said.radios, said.networks);
    }

    private Optional<Review> review(ResultSet row) throws SQLException {
        String text = row.getString("review");
        if (text == null) {
            return Optional.empty();
        }
        Entered entered = read(text, Entered.class);
        DeviceKind kind = entered.kind == null ? null : DeviceKind.valueOf(entered.kind);
        return Optional.of(new Review(row.getLong("id"), entered.ticked, entered.name, kind, entered.place));
    }

    /** Keeps what was entered for lines of this sweep. */
    public void keep(long sweepId, List<Review> reviews) {
        tables.on(connection -> {
            try (PreparedStatement statement = connection.prepareStatement(
                    "update sweep_finding set review = ?::jsonb where id = ? and sweep_id = ?")) {
                for (Review review : reviews) {
                    String kind = review.kind() == null ? null : review.kind().name();
                    Entered entered = new Entered(review.ticked(), review.name(), kind, review.place());
                    Tables.fill(statement, text(entered).replace("\\u0000", ""), review.findingId(), sweepId);
                    statement.addBatch();
                }
                return statement.executeBatch().length;
            }
        });
    }

    /** Marks findings as adopted as a device. */
    public void adopted(Collection<Long> findings, long deviceId, Instant at) {
        tables.run(
                "update sweep_finding set adopted_as = ?, adopted_at = ? where id = any (?)",
                deviceId,
                SweepTable.time(at),
                new ArrayList<>(findings));
    }

    private String text(Object value) {
        try {
            return json.writeValueAsString(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("what is kept is plain text", e);
        }
    }

    private <T> T read(String text, Class<T> type) {
        try {
            return json.readValue(text, type);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a stored finding cannot be read", e);
        }
    }
}
