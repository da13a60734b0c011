package org.roundsman.rules.live;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.PastAlarms;
import org.roundsman.readings.PastReadings;
import org.roundsman.rules.RuleBook;
import org.roundsman.rules.store.DeviceTable;
import org.roundsman.rules.store.MemoryTable;
import org.roundsman.timeline.PastEvents;

/** What the live rules are made of. */
@ApplicationScoped
class Parts {

    private LiveFolds.Sources sources;
    private LiveFolds.Tables tables;
    private ServiceFigures figures;

    @Inject
    void tables(DeviceTable devices, MemoryTable memories, ServiceFigures own) {
        tables = new LiveFolds.Tables(devices, memories);
        figures = own;
    }

    @Inject
    void sources(RuleBook rules, AlarmBook alarms, PastAlarms past, PastReadings readings, PastEvents events) {
        sources = new LiveFolds.Sources(rules::current, new LiveFolds.Alarms(alarms, past), readings, events, null);
    }

    LiveFolds.Sources sources() {
        return new LiveFolds.Sources(sources.rules(), sources.alarms(), sources.readings(), sources.events(), tables);
    }

    ServiceFigures figures() {
        return figures;
    }
}
