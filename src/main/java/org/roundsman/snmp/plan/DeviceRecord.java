package org.roundsman.snmp.plan;

import java.util.List;
import org.roundsman.snmp.counter.Uptime;
import org.roundsman.snmp.profile.Profile;
import org.roundsman.snmp.session.Peer;

/** Everything remembered of one device between visits. One visit at a time, on its agent's thread. */
public final class DeviceRecord {

    final Peer peer;
    final SlotBook book = new SlotBook();
    final Uptime uptime = new Uptime();
    Limits limits = new Limits();

    /** Null before the first survey. */
    PollPlan plan;

    /** What the last survey found; null before the first. */
    Survey.Result found;

    private List<Profile> madeFrom;
    private List<Fetch.Portion> portions;
    private long surveyDueNanos;
    private int failedSurveys;
    /** Surveys since an object went away, that one included; 0 when it is so long ago that the usual pace will do. */
    private int surveysSinceGone;

    public DeviceRecord(Peer peer) {
        this.peer = peer;
    }

    public Peer peer() {
        return peer;
    }

    boolean surveyDue(long now) {
        return plan == null || surveyIsDue(now);
    }

    boolean surveyIsDue(long now) {
        return now - surveyDueNanos >= 0;
    }

    /** Something that was there is gone: a survey as soon as may be, and more of them until it must be seen that it is back. */
    void lacks(long now) {
        surveyDueNanos = now;
        surveysSinceGone = 1;
    }

    /** After a survey: when the next one is due. One that was not answered in full is repeated sooner, but not each round. */
    void surveyed(boolean complete, long now, long everyNanos) {
        failedSurveys = complete ? 0 : failedSurveys + 1;
        long soon = java.time.Duration.ofSeconds(30).toNanos() << Math.min(failedSurveys, 10);
        surveyDueNanos = now + (complete ? next(everyNanos) : Math.min(everyNanos, soon));
    }

    /**
     * What went away, such as the figures of a radio that was switched off, may come back, and a plan knows only what was
     * there at its survey: one, two, four minutes later and so on it is looked for again.
     */
    private long next(long everyNanos) {
        long again = java.time.Duration.ofSeconds(30).toNanos() << Math.min(surveysSinceGone, 10);
        if (surveysSinceGone == 0 || again >= everyNanos) {
            surveysSinceGone = 0;
            return everyNanos;
        }
        surveysSinceGone++;
        return again;
    }

    void use(PollPlan made) {
        plan = made;
        portions = null;
    }

    /** Keeps which profiles the plan was made from. */
    void madeFrom(List<Profile> profiles, Survey.Result result) {
        madeFrom = profiles;
        found = result;
    }

    /** Whether the plan was made from this very set of profiles, and not from one that was in use before. */
    boolean wasMadeFrom(List<Profile> profiles) {
        return madeFrom == profiles;
    }

    /** The Gets of a round, cut once. */
    List<Fetch.Portion> portions() {
        if (portions == null) {
            portions = Fetch.portions(plan.fast(), limits);
        }
        return portions;
    }

    /** After the agent refused a Get as it was: the next round's are cut anew. */
    void cutAgain() {
        portions = null;
    }
}
