package org.roundsman.boot;

import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalTime;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import javax.sql.DataSource;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.DemoSite;
import org.roundsman.system.Transaction;

/** Work that was planned in the invented past, some of it across midnight; once. */
@ApplicationScoped
class DemoPlannedPast {

    private static final int AFTER_PURCHASES = 6_000;
    /** Every so many sites were worked on. */
    private static final int EVERY = 5;

    private static final int MONTHS = 3;
    private static final int HOURS = 2;
    private static final LocalTime BEGINS = LocalTime.of(22, 45);
    private static final List<String> TITLES =
            List.of("Access points upgraded", "Switch cabinet tidied", "Channel plan checked and changed");

    private static final String INSERT = """
        insert into planned_work (reach, customer_id, site_id, title, reason, kind, from_at, to_at, made_by, made_at, over_at)
        select 'SITE', s.customer_id, s.id, ?, ?, 'ONCE', ?, ?, 'wren (invented)', ?, ?
          from device d join site s on s.id = d.site_id
         where d.id = ?
           and not exists (select 1 from planned_work p where p.site_id = s.id and p.from_at = ?)
        """;

    private final DataSource database;

    @Inject
    DemoPlannedPast(DataSource database) {
        this.database = database;
    }

    void sow(@Observes @Priority(AFTER_PURCHASES) DemoSown sown) {
        try {
            Transaction.run(database, connection -> {
                for (DemoSite site : sown.fleet().sites()) {
                    if (site.number() % EVERY == 1) {
                        sow(connection, sown, site);
                    }
                }
                return null;
            });
        } catch (SQLException e) {
            throw new IllegalStateException("The invented planned work could not be written: " + e.getMessage(), e);
        }
    }

    private static void sow(Connection connection, DemoSown sown, DemoSite site) throws SQLException {
        Long device = site.devices().stream()
                .map(DemoDevice::number)
                .map(sown.ids()::get)
                .filter(id -> id != null)
                .findFirst()
                .orElse(null);
        if (device == null) {
            return;
        }
        YearMonth now = YearMonth.from(sown.first().atZone(site.zone()));
        for (int back = 1; back <= MONTHS; back++) {
            Instant from = evening(now.minusMonths(back), site.zone());
            String title = TITLES.get((site.number() + back) % TITLES.size());
            insert(connection, device, title, from);
        }
    }

    /** The second Tuesday, when the site is closed. */
    private static Instant evening(YearMonth month, ZoneId zone) {
        return ZonedDateTime.of(
                        month.atDay(1).with(TemporalAdjusters.dayOfWeekInMonth(2, DayOfWeek.TUESDAY)), BEGINS, zone)
                .toInstant();
    }

    private static void insert(Connection connection, long device, String title, Instant from) throws SQLException {
        Instant to = from.plusSeconds(HOURS * 3_600L);
        try (PreparedStatement statement = connection.prepareStatement(INSERT)) {
            statement.setString(1, title);
            statement.setString(2, DemoFleet.NOTE);
            statement.setObject(3, from.atOffset(ZoneOffset.UTC));
            statement.setObject(4, to.atOffset(ZoneOffset.UTC));
            statement.setObject(5, from.minusSeconds(86_400).atOffset(ZoneOffset.UTC));
            statement.setObject(6, to.atOffset(ZoneOffset.UTC));
            statement.setLong(7, device);
            statement.setObject(8, from.atOffset(ZoneOffset.UTC));
            statement.executeUpdate();
        }
    }
}
