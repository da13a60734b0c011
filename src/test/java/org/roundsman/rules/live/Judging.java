package org.roundsman.rules.live;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.PastAlarms;
import org.roundsman.alarms.Signal;
import org.roundsman.measure.Reading;
import org.roundsman.readings.PastReadings;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.store.DeviceTable;
import org.roundsman.rules.store.MemoryTable;
import org.roundsman.timeline.PastEvents;

/** The live rules without their thread: readings in, signals out. */
public final class Judging {

    private final LiveFolds folds;
    private final List<Signal> out = new ArrayList<>();

    /** Begins as a start of the service does, with nothing but what is stored. */
    public Judging(DataSource database, AlarmBook book, Clock clock) {
        folds = new LiveFolds(
                new LiveFolds.Sources(
                        RuleSet::shipped,
                        new LiveFolds.Alarms(book, new PastAlarms(database)),
                        new PastReadings(database),
                        new PastEvents(database),
                        new LiveFolds.Tables(new DeviceTable(database), new MemoryTable(database))),
                clock);
        folds.begin(out);
    }

    /** Judges stored readings and what is on the timeline by now; the signals that this gives. */
    public List<Signal> judge(List<Reading> readings) {
        readings.forEach(reading -> folds.take(reading, out));
        folds.events(out);
        folds.save();
        List<Signal> given = List.copyOf(out);
        out.clear();
        return given;
    }
}
