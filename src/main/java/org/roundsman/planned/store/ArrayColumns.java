package org.roundsman.planned.store;

import java.sql.Date;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;

/** Arrays that the tables of planned work hold. */
final class ArrayColumns {

    private ArrayColumns() {}

    static List<LocalDate> days(ResultSet row, String column) throws SQLException {
        return Arrays.stream((Date[]) row.getArray(column).getArray())
                .map(Date::toLocalDate)
                .toList();
    }

    static List<Integer> numbers(ResultSet row, String column) throws SQLException {
        return List.of((Integer[]) row.getArray(column).getArray());
    }

    static List<Instant> instants(ResultSet row, String column) throws SQLException {
        return Arrays.stream((java.sql.Timestamp[]) row.getArray(column).getArray())
                .map(java.sql.Timestamp::toInstant)
                .toList();
    }
}
