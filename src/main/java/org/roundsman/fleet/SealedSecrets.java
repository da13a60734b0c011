package org.roundsman.fleet;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.roundsman.fleet.CredentialSeals.Field;

/** Every sealed secret of the database, past the container: for the change of the key alone. */
final class SealedSecrets {

    private SealedSecrets() {}

    /** One of them, and where it stands. */
    record Secret(long id, String name, Field field, byte[] sealed) {
        @Override
        public String toString() {
            return field + " of " + field.owner(id);
        }
    }

    /** Whether the database has been set up. */
    static boolean there(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(
                        "select to_regclass('credential') is not null and to_regclass('audit_entry') is not null")) {
            row.next();
            return row.getBoolean(1);
        }
    }

    /** Keeps everybody else from changing secrets until the transaction ends. */
    static void lock(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("set local lock_timeout = '30s'");
            for (String table : tables(connection)) {
                statement.execute("lock table " + table + " in share row exclusive mode");
            }
        }
    }

    /** Those that are there: a database that an earlier version of the program set up may lack one. */
    private static Set<String> tables(Connection connection) throws SQLException {
        Set<String> there = new LinkedHashSet<>();
        for (Field field : Field.values()) {
            try (PreparedStatement statement = connection.prepareStatement("select to_regclass(?) is not null")) {
                statement.setString(1, field.table());
                try (ResultSet row = statement.executeQuery()) {
                    row.next();
                    if (row.getBoolean(1)) {
                        there.add(field.table());
                    }
                }
            }
        }
        return there;
    }

    static List<Secret> read(Connection connection) throws SQLException {
        List<Secret> secrets = new ArrayList<>();
        for (String table : tables(connection)) {
            try (Statement statement = connection.createStatement();
                    ResultSet rows = statement.executeQuery("select * from " + table + " order by id")) {
                while (rows.next()) {
                    read(rows, table, secrets);
                }
            }
        }
        return secrets;
    }

    private static void read(ResultSet row, String table, List<Secret> secrets) throws SQLException {
        for (Field field : Field.values()) {
            byte[] sealed = field.table().equals(table) ? row.getBytes(field.column()) : null;
            if (sealed != null) {
                secrets.add(new Secret(row.getLong("id"), row.getString("name"), field, sealed));
            }
        }
    }

    static void write(Connection connection, Secret secret, byte[] sealed) throws SQLException {
        String change =
                "update " + secret.field().table() + " set " + secret.field().column() + " = ? where id = ?";
        try (PreparedStatement statement = connection.prepareStatement(change)) {
            statement.setBytes(1, sealed);
            statement.setLong(2, secret.id());
            statement.executeUpdate();
        }
    }
}
