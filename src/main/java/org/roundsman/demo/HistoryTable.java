package org.roundsman.demo;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.Set;
import javax.sql.DataSource;

/** Progress kept in the table demo_history. Thread-safe. */
public final class HistoryTable implements HistoryProgress {

    private final DataSource source;

    public HistoryTable(DataSource source) {
        this.source = source;
    }

    @Override
    public Set<LocalDate> finished() {
        Set<LocalDate> days = new HashSet<>();
        try (Connection connection = source.getConnection();
                PreparedStatement select = connection.prepareStatement("select day from demo_history");
                ResultSet rows = select.executeQuery()) {
            while (rows.next()) {
                days.add(rows.getObject(1, LocalDate.class));
            }
            return days;
        } catch (SQLException e) {
            throw new IllegalStateException("which days of the invented history are stored cannot be read", e);
        }
    }

    @Override
    public void finish(LocalDate day) {
        String sql = "insert into demo_history (day) values (?) on conflict do nothing";
        try (Connection connection = source.getConnection();
                PreparedStatement insert = connection.prepareStatement(sql)) {
            insert.setObject(1, day);
            insert.executeUpdate();
        } catch (SQLException e) {
            throw new IllegalStateException("that " + day + " of the invented history is stored cannot be noted", e);
        }
    }
}
