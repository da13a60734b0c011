package org.roundsman.readings.store;

import java.sql.SQLException;
import java.util.Set;

/** What an error of the database means, by its SQLSTATE (PostgreSQL manual, appendix A). */
final class Failure {

    /** Data exceptions and integrity violations: the fault lies in the rows. */
    private static final Set<String> OF_ROWS = Set.of("22", "23");

    private Failure() {}

    /** Whether another attempt with the same rows must fail too. */
    static boolean ofRows(Exception e) {
        return e instanceof RuntimeException
                || e instanceof SQLException sql
                        && sql.getSQLState() != null
                        && OF_ROWS.contains(sql.getSQLState().substring(0, 2));
    }

    /** What is wrong and what mends it, for a person. */
    static String words(Exception e) {
        String state = e instanceof SQLException sql && sql.getSQLState() != null ? sql.getSQLState() : "08";
        String text = firstLine(e);
        if (state.equals("53100")) {
            return "The database's disk is full (" + text + "). Free space there; readings wait until then.";
        }
        if (state.startsWith("08") || state.startsWith("57P")) {
            return "The database cannot be reached (" + text + "). Start it, or mend the way to it; readings wait until"
                    + " then.";
        }
        if (state.startsWith("28") || state.startsWith("42")) {
            return "The database refuses to take readings (" + text
                    + "). Check its user's rights and whether the tables are those of this version; readings wait until"
                    + " then.";
        }
        return "The database takes no readings (" + text + "). They wait and are stored when it does.";
    }

    private static String firstLine(Exception e) {
        String text = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
        return text.lines().findFirst().orElse("");
    }
}
