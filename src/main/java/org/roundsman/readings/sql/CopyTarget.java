package org.roundsman.readings.sql;

import java.sql.Connection;
import java.sql.SQLException;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyIn;

/**
 * A table that rows are copied into.
 *
 * @param table its name
 * @param columns those that rows bring, in their order, separated by commas
 * @param key the primary key's columns, separated by commas
 */
public record CopyTarget(String table, String columns, String key) {

    public int width() {
        return (int) columns.chars().filter(c -> c == ',').count() + 1;
    }

    /** Copies rows straight into the table: the fast way, which fails when one of them exists already. */
    public void copy(Connection connection, CopyRows rows) throws SQLException {
        if (rows.rows() > 0) {
            copyInto(connection, table, rows);
        }
    }

    /** Copies by way of a temporary table and leaves alone what exists already; returns how many rows were new. */
    public int copyNew(Connection connection, CopyRows rows) throws SQLException {
        if (rows.rows() == 0) {
            return 0;
        }
        stage(connection, rows);
        try (var statement = connection.createStatement()) {
            return statement.executeUpdate(insertNew());
        }
    }

    /** Puts the rows into the temporary table {@link #staged()}, which lives as long as the transaction. */
    public void stage(Connection connection, CopyRows rows) throws SQLException {
        try (var statement = connection.createStatement()) {
            statement.execute("drop table if exists pg_temp." + staged());
            statement.execute("create temp table " + staged() + " on commit drop as select " + columns + " from "
                    + table + " with no data");
        }
        copyInto(connection, staged(), rows);
    }

    public String staged() {
        return "staged_" + table;
    }

    /** Inserts what is staged and leaves alone what exists already. */
    public String insertNew() {
        return "insert into " + table + " (" + columns + ") select distinct on (" + key + ") " + columns + " from "
                + staged() + " on conflict (" + key + ") do nothing";
    }

    private void copyInto(Connection connection, String into, CopyRows rows) throws SQLException {
        CopyIn copy = connection
                .unwrap(PGConnection.class)
                .getCopyAPI()
                .copyIn("copy " + into + " (" + columns + ") from stdin (format binary)");
        try {
            byte[] octets = rows.finished();
            copy.writeToCopy(octets, 0, octets.length);
            copy.endCopy();
        } finally {
            if (copy.isActive()) {
                copy.cancelCopy();
            }
        }
    }
}
