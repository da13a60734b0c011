package org.roundsman.demo;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import javax.sql.DataSource;

/** Remembers in the table demo_fleet which invented fleet a database holds. Thread-safe. */
public final class SownFleet {

    private final DataSource source;

    public SownFleet(DataSource source) {
        this.source = source;
    }

    /**
     * Size and number of a fleet.
     *
     * @param accessPoints how many access points
     * @param seed what everything that is drawn by lot is drawn from
     */
    public record Choice(int accessPoints, long seed) {}

    /**
     * The fleet to run: the one that the database holds, or the wished one on an empty database, which is remembered.
     *
     * @param accessPoints the wish, empty for what is there, or else the usual
     * @param seed likewise
     * @throws IllegalStateException when the database holds another fleet than the one wished for
     */
    public Choice choose(OptionalInt accessPoints, OptionalLong seed) {
        try (Connection connection = source.getConnection()) {
            Optional<Choice> held = held(connection);
            Choice usual = held.orElse(new Choice(DemoFleet.USUAL_SIZE, DemoFleet.USUAL_SEED));
            Choice wished = new Choice(accessPoints.orElse(usual.accessPoints), seed.orElse(usual.seed));
            if (held.isEmpty()) {
                remember(connection, wished);
            } else if (!held.get().equals(wished)) {
                throw new IllegalStateException("This data holds the invented fleet of " + usual.accessPoints
                        + " access points and seed " + usual.seed + ", not of " + wished.accessPoints + " and "
                        + wished.seed + ". Start with those, with another data folder, or afresh (--fresh).");
            }
            return wished;
        } catch (SQLException e) {
            throw new IllegalStateException("which invented fleet the database holds cannot be read", e);
        }
    }

    private static Optional<Choice> held(Connection connection) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement("select access_points, seed from demo_fleet");
                ResultSet row = select.executeQuery()) {
            return row.next() ? Optional.of(new Choice(row.getInt(1), row.getLong(2))) : Optional.empty();
        }
    }

    private static void remember(Connection connection, Choice choice) throws SQLException {
        try (PreparedStatement insert =
                connection.prepareStatement("insert into demo_fleet (access_points, seed) values (?, ?)")) {
            insert.setInt(1, choice.accessPoints);
            insert.setLong(2, choice.seed);
            insert.executeUpdate();
        }
    }
}
