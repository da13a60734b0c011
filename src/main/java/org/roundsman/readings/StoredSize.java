package org.roundsman.readings;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import javax.sql.DataSource;
import org.jboss.logging.Logger;

/** How much is stored, for those who look after the service. */
@ApplicationScoped
public class StoredSize {

    private static final Logger LOG = Logger.getLogger(StoredSize.class);

    /** Raw partitions are named by their UTC day, so that the least name is the oldest. */
    private static final String QUESTION = """
            select count(*), min(substring(child.relname from '\\d{8}$')) filter (where parent.relname = 'reading_device'),
                   pg_database_size(current_database())
            from pg_inherits
            join pg_class child on child.oid = inhrelid and child.relkind = 'r'
            join pg_class parent on parent.oid = inhparent and parent.relkind = 'p'
            """;

    private final DataSource source;

    @Inject
    StoredSize(DataSource source) {
        this.source = source;
    }

    /**
     * What is stored.
     *
     * @param partitions of raw readings and quarter hours together
     * @param oldestDay UTC day of the oldest raw readings that are kept
     * @param bytes of the whole database
     */
    public record Size(int partitions, Optional<LocalDate> oldestDay, long bytes) {}

    /** Empty when the database does not answer. */
    public Optional<Size> now() {
        try (Connection connection = source.getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(QUESTION)) {
            row.next();
            Optional<LocalDate> oldest = Optional.ofNullable(row.getString(2))
                    .map(day -> LocalDate.parse(day, DateTimeFormatter.BASIC_ISO_DATE));
            return Optional.of(new Size(row.getInt(1), oldest, row.getLong(3)));
        } catch (SQLException e) {
            LOG.debugf("The size of what is stored cannot be read: %s", e.getMessage());
            return Optional.empty();
        }
    }
}
