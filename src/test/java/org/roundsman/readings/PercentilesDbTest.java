package org.roundsman.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.sql.SQLException;
import java.util.Arrays;
import javax.sql.DataSource;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.lifecycle.BeforeContainer;
import org.roundsman.testing.TestDatabase;

/** Against PostgreSQL's percentile_cont, an implementation that nobody here wrote. */
class PercentilesDbTest {

    private static DataSource source;

    @BeforeContainer
    static void database() {
        source = TestDatabase.fresh("percentiles");
    }

    @Property(tries = 200)
    void agreesWithTheDatabase(
            @ForAll @Size(min = 1, max = 60) double @DoubleRange(min = -1e6, max = 1e6) [] figures,
            @ForAll @DoubleRange(min = 0, max = 1) double p)
            throws SQLException {
        try (var connection = source.getConnection();
                var statement = connection.prepareStatement(
                        "select percentile_cont(?::float8) within group (order by v) from unnest(?::float8[]) v")) {
            statement.setDouble(1, p);
            statement.setArray(
                    2,
                    connection.createArrayOf(
                            "float8", Arrays.stream(figures).boxed().toArray()));
            try (var row = statement.executeQuery()) {
                row.next();
                assertThat(Percentiles.type7(figures, p)).isCloseTo(row.getDouble(1), within(1e-6));
            }
        }
    }
}
