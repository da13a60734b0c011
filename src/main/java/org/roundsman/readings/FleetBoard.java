package org.roundsman.readings;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.readings.board.DeviceBoard;
import org.roundsman.readings.board.Moment;
import org.roundsman.readings.board.SiteBoard;
import org.roundsman.shared.Page;

/**
 * The fleet as it is now. Filter, order and paging are done by the database, in a fixed number of statements a page.
 * While storing is behind, devices keep the condition that was last known.
 */
@ApplicationScoped
public class FleetBoard {

    private final DataSource source;
    private final Clock clock;
    private final BacklogSource backlog;

    @Inject
    public FleetBoard(DataSource source, Clock clock, BacklogSource backlog) {
        this.source = source;
        this.clock = clock;
        this.backlog = backlog;
    }

    public FleetTotals totals(CustomerScope scope) {
        return ask((connection, moment) -> new SiteBoard(connection, moment).totals(scope));
    }

    public Page<SiteRow> sites(CustomerScope scope, BoardQuery query) {
        return ask((connection, moment) -> new SiteBoard(connection, moment).page(scope, query));
    }

    public Page<DeviceRow> devices(CustomerScope scope, BoardQuery query) {
        return ask((connection, moment) -> new DeviceBoard(connection, moment).page(scope, query));
    }

    /**
     * Devices by ascending id, for those who read the whole fleet piece by piece. Sort, page and size of the query do not
     * count, and the ribbons are blank.
     *
     * @param after only devices with a greater id
     * @param most at most so many
     */
    public List<DeviceRow> devicesAfter(CustomerScope scope, BoardQuery query, long after, int most) {
        return ask((connection, moment) -> new DeviceBoard(connection, moment).after(scope, query, after, most));
    }

    /** One device, empty when it does not exist or lies outside the scope. */
    public Optional<DeviceRow> device(CustomerScope scope, long deviceId) {
        return ask((connection, moment) -> new DeviceBoard(connection, moment).device(scope, deviceId));
    }

    /** One site, empty when it does not exist or lies outside the scope. */
    public Optional<SiteRow> site(CustomerScope scope, long siteId) {
        return ask((connection, moment) -> new SiteBoard(connection, moment).site(scope, siteId));
    }

    private interface Question<T> {
        T answer(Connection connection, Moment moment) throws SQLException;
    }

    private <T> T ask(Question<T> question) {
        Moment moment = new Moment(clock.instant(), backlog.backlog().behind());
        try (Connection connection = source.getConnection()) {
            return question.answer(connection, moment);
        } catch (SQLException e) {
            throw new IllegalStateException("the fleet cannot be read from the database: " + e.getMessage(), e);
        }
    }
}
