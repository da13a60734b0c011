package org.roundsman.fleet;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.roundsman.fleet.CredentialSeals.Field;

/** Every sealed secret of the database, past the container: for the change of the key alone. */
final class SealedSecrets {

    private SealedSecrets() {}

    /** One of them, and where it stands. */
    record Secret(long id, String name, Field field, byte[] sealed) {
        @Override
        public String toString() {
            return field + " of credentials " + id;
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
            statement.execute("lock table credential in share row exclusive mode");
        }
    }

    static List<Secret> read(Connection connection) throws SQLException {
        List<Secret> secrets = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("select * from credential order by id")) {
            while (rows.next()) {
                for (Field field : Field.values()) {
                    byte[] sealed = rows.getBytes(field.column());
                    if (sealed != null) {
                        secrets.add(new Secret(rows.getLong("id"), rows.getString("name"), field, sealed));
                    }
                }
            }
        }
        return secrets;
    }

    static void write(Connection connection, Secret secret, byte[] sealed) throws SQLException {
        String change = "update credential set " + secret.field().column() + " = ? where id = ?";
        try (PreparedStatement statement = connection.prepareStatement(change)) {
            statement.setBytes(1, sealed);
            statement.setLong(2, secret.id());
            statement.executeUpdate();
        }
    }
}
