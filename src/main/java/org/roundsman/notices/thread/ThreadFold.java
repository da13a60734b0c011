package org.roundsman.notices.thread;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.notices.StatusChange;

/** Takes status changes into threads: which thread a raise belongs to, and when one was cleared. Not thread-safe. */
public final class ThreadFold {

    private final Duration calmTime;
    private final Map<Long, NoticeThread> latest = new LinkedHashMap<>();
    private final List<NoticeThread> earlier = new ArrayList<>();

    /**
     * @param open threads that are not over, in the order of their ids
     */
    public ThreadFold(Duration calmTime, Collection<NoticeThread> open) {
        this.calmTime = calmTime;
        open.forEach(thread -> latest.put(thread.alarmId(), thread));
    }

    /** Takes one change, in the order in which they happened. */
    public void take(StatusChange change) {
        NoticeThread thread = latest.get(change.alarmId());
        if (change.severity().isEmpty()) {
            if (thread != null && thread.clearedAt().isEmpty()) {
                latest.put(change.alarmId(), thread.cleared(change.at()));
            }
        } else if (thread == null) {
            latest.put(change.alarmId(), NoticeThread.begin(change.alarmId(), change.episodeId(), change.at()));
        } else if (thread.clearedAt().isPresent()) {
            raiseAfterClear(thread, change);
        }
    }

    private void raiseAfterClear(NoticeThread thread, StatusChange change) {
        boolean calm = !change.at().isBefore(thread.clearedAt().get().plus(calmTime));
        if (calm) {
            earlier.add(thread);
            latest.put(change.alarmId(), NoticeThread.begin(change.alarmId(), change.episodeId(), change.at()));
        } else {
            latest.put(change.alarmId(), thread.raisedAgain(change.episodeId()));
        }
    }

    /** All threads as they are now; those with id 0 are new. */
    public List<NoticeThread> threads() {
        List<NoticeThread> all = new ArrayList<>(earlier);
        all.addAll(latest.values());
        return all;
    }
}
