package org.roundsman.firmware.upgrade;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.roundsman.firmware.FigureChange;
import org.roundsman.firmware.FigureChange.Figure;
import org.roundsman.firmware.store.ChangeTable;
import org.roundsman.firmware.store.ChangeTable.Open;
import org.roundsman.firmware.store.QuarterTable;

/**
 * Works out how devices did in the week after a change of firmware, from two days after it on, again and again until the week
 * is over and all of its quarter hours are there, or so long that no more will come.
 */
public final class Comparing {

    /** Sooner there is too little to compare. */
    public static final Duration FIRST = Duration.ofDays(2);

    private static final Duration AGAIN = Duration.ofMinutes(10);
    private static final Duration ROLLED_UP = Duration.ofHours(1);
    private static final Duration NO_MORE = Duration.ofDays(30);
    private static final int A_PASS = 20;

    /** Nearly a whole week: some quarter hours are lost to the restart and to silences. */
    private static final int ENOUGH = FigureChange.WHOLE_WEEK * 9 / 10;

    private final ChangeTable table;
    private final QuarterTable quarters;

    public Comparing(DataSource database) {
        this.table = new ChangeTable(database);
        this.quarters = new QuarterTable(database);
    }

    /** Works out some of what is due. */
    public void look(Instant now) {
        for (Open change : table.open(now.minus(FIRST), now.minus(AGAIN), A_PASS)) {
            Weeks weeks = Weeks.around(change);
            if (Duration.between(weeks.again(), weeks.to()).compareTo(FIRST.minusHours(1)) < 0) {
                table.keep(change.id(), now, true, List.of());
                continue;
            }
            List<FigureChange> figures = figures(change, weeks);
            table.keep(change.id(), now, settled(change, weeks, figures, now), figures);
        }
    }

    private List<FigureChange> figures(Open change, Weeks weeks) {
        Map<Figure, Map<Instant, Double>> values = quarters.of(change.deviceId(), weeks.from(), weeks.to());
        List<FigureChange> figures = new ArrayList<>();
        values.forEach(
                (figure, some) -> weeks.compare(figure, some, change.zone()).ifPresent(figures::add));
        return figures;
    }

    private static boolean settled(Open change, Weeks weeks, List<FigureChange> figures, Instant now) {
        boolean over = !now.isBefore(weeks.to().plus(ROLLED_UP));
        boolean whole = !figures.isEmpty() && figures.stream().allMatch(figure -> figure.quarters() >= ENOUGH);
        return over && whole || !now.isBefore(change.at().plus(NO_MORE));
    }
}
