package org.roundsman.system;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Properties;
import org.roundsman.system.SetupException.Fault;

/** A PostgreSQL that somebody else runs: tried once before the service starts, so that what is wrong is said in words. */
public final class ExternalDatabase {

    private static final String PREFIX = "jdbc:postgresql:";
    private static final int OLDEST_MAJOR_VERSION = 15;
    private static final String TRY_SECONDS = "10";

    private ExternalDatabase() {}

    /**
     * The address from the settings, after a connection to it worked.
     *
     * @param settings with a url in them
     * @throws SetupException when it cannot be reached, refuses us, or is older than PostgreSQL 15
     */
    public static DatabaseAddress reach(DatabaseSettings settings) {
        String url = settings.url().orElseThrow();
        if (!url.startsWith(PREFIX)) {
            throw new SetupException(
                    Fault.DATABASE,
                    "roundsman.database.url is " + url + ", but must look like jdbc:postgresql://host:5432/roundsman");
        }
        DatabaseAddress address = new DatabaseAddress(url, settings.user(), password(settings));
        try (Connection connection = DriverManager.getConnection(url, properties(address))) {
            int version = connection.getMetaData().getDatabaseMajorVersion();
            if (version < OLDEST_MAJOR_VERSION) {
                throw new SetupException(
                        Fault.DATABASE,
                        "The database at " + place(url) + " is PostgreSQL " + version + "; at least "
                                + OLDEST_MAJOR_VERSION + " is needed.");
            }
            return address;
        } catch (SQLException e) {
            throw new SetupException(Fault.DATABASE, unreachable(address, e), e);
        }
    }

    private static Properties properties(DatabaseAddress address) {
        Properties properties = new Properties();
        properties.setProperty("user", address.user());
        properties.setProperty("password", address.password());
        properties.setProperty("connectTimeout", TRY_SECONDS);
        properties.setProperty("socketTimeout", TRY_SECONDS);
        return properties;
    }

    private static String password(DatabaseSettings settings) {
        if (settings.passwordFile().isEmpty()) {
            return settings.password().orElse("");
        }
        Path file = settings.passwordFile().get();
        try {
            return Files.readString(file).replaceFirst("\\R\\z", "");
        } catch (IOException e) {
            throw new SetupException(
                    Fault.DATABASE,
                    "The password file " + file + " (roundsman.database.password-file) cannot be read: " + e,
                    e);
        }
    }

    private static String unreachable(DatabaseAddress address, SQLException e) {
        String state = e.getSQLState() == null ? "" : e.getSQLState();
        String mend = state.startsWith("08")
                ? "Check that PostgreSQL runs there, listens on that address, and that no firewall is between."
                : state.startsWith("28")
                        ? "Check roundsman.database.user and its password, and the server's pg_hba.conf."
                        : state.equals("3D000")
                                ? "Create the database, owned by that user."
                                : "See roundsman.database.* in the configuration.";
        return "The database at " + place(address.url()) + " cannot be used as user " + address.user() + ": "
                + e.getMessage() + " " + mend;
    }

    /** "db.example, port 5432, database roundsman": what a person checks first. */
    private static String place(String url) {
        Properties parsed = org.postgresql.Driver.parseURL(url, new Properties());
        if (parsed == null) {
            return url;
        }
        return parsed.getProperty("PGHOST") + ", port " + parsed.getProperty("PGPORT") + ", database "
                + parsed.getProperty("PGDBNAME");
    }
}
