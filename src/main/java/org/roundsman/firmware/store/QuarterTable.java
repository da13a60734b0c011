package org.roundsman.firmware.store;

import java.time.Instant;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import javax.sql.DataSource;
import org.roundsman.firmware.FigureChange.Figure;

/** Reads the quarter hours of one device: of its radios the mean over all readings. */
public final class QuarterTable {

    private final Sql sql;

    public QuarterTable(DataSource database) {
        this.sql = new Sql(database);
    }

    /** By figure and start of the quarter hour; those without a figure are left out. */
    public Map<Figure, Map<Instant, Double>> of(long device, Instant from, Instant to) {
        Map<Figure, Map<Instant, Double>> found = new EnumMap<>(Figure.class);
        found.put(
                Figure.CLIENTS,
                read(
                        "select at, clients_mean from quarter_device where device_id = ? and at >= ? and at < ?"
                                + " and clients_n > 0",
                        device,
                        from,
                        to));
        found.put(Figure.RETRIES, radios("retries", device, from, to));
        found.put(Figure.UTILISATION, radios("utilisation", device, from, to));
        return found;
    }

    private Map<Instant, Double> radios(String column, long device, Instant from, Instant to) {
        return read(
                ("select at, sum(%s_mean * %s_n) / sum(%s_n) from quarter_radio where device_id = ? and at >= ?"
                                + " and at < ? and %s_n > 0 group by at")
                        .replace("%s", column),
                device,
                from,
                to);
    }

    private Map<Instant, Double> read(String question, long device, Instant from, Instant to) {
        Map<Instant, Double> values = new HashMap<>();
        sql.rows(question, row -> values.put(Sql.moment(row, "at").orElseThrow(), row.getDouble(2)), device, from, to);
        return values;
    }
}
