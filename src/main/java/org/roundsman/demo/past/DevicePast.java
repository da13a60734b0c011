package org.roundsman.demo.past;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.roundsman.demo.DemoCredential;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.Fault;
import org.roundsman.demo.Faults;
import org.roundsman.demo.HistorySink.DeviceQuarter;
import org.roundsman.demo.HistorySink.PastSpan;
import org.roundsman.demo.model.Counters;
import org.roundsman.demo.model.Figures;
import org.roundsman.demo.model.Outlook;
import org.roundsman.demo.model.Stretch;
import org.roundsman.demo.model.Usage;
import org.roundsman.measure.Condition;

/** What rounds would have brought back from one device. One thread at a time. */
public final class DevicePast {

    /** Three moments of a quarter hour stand for it. */
    private static final long SAMPLE_MILLIS = 300_000;
    /** Three rounds a minute apart; a shorter silence is no span. */
    private static final long SHORTEST_SILENCE_MILLIS = 180_000;

    private final DemoDevice device;
    private final Faults faults;
    private final Usage usage;
    private final QuarterMeans means;
    private final Figures figures;
    private final Outlook outlook = new Outlook();

    public DevicePast(DemoFleet fleet, DemoDevice device, Faults faults) {
        this.device = device;
        this.faults = faults;
        this.usage = new Usage(fleet, device);
        this.means = new QuarterMeans(device, fleet.siteOf(device).networks());
        this.figures = new Figures(device.radios().size());
    }

    /** Its quarter hours in that stretch, without those in which it never answered. */
    public List<DeviceQuarter> quarters(Instant from, Instant to) {
        List<DeviceQuarter> quarters = new ArrayList<>();
        if (device.standing().contains(Fault.CREDENTIAL_WRONG)) {
            return quarters;
        }
        for (long at = from.toEpochMilli(); at < to.toEpochMilli(); at += Counters.QUARTER_MILLIS) {
            means.clear();
            for (long moment = at; moment < at + Counters.QUARTER_MILLIS; moment += SAMPLE_MILLIS) {
                sample(moment);
            }
            if (means.samples() > 0) {
                usage.gains(at / Counters.QUARTER_MILLIS, faults.bits(device, at), means.gains());
                quarters.add(means.quarter(Instant.ofEpochMilli(at)));
            }
        }
        return quarters;
    }

    private void sample(long moment) {
        faults.look(device, moment, outlook);
        if (!outlook.silent) {
            usage.show(moment, outlook.faults, figures);
            means.add(figures);
        }
    }

    /** Its spans, which fill the whole stretch. */
    public List<PastSpan> spans(Instant from, Instant to) {
        if (device.standing().contains(Fault.CREDENTIAL_WRONG)) {
            return List.of(new PastSpan(device.number(), from, to, refusal()));
        }
        List<PastSpan> spans = new ArrayList<>();
        Instant answering = from;
        for (Stretch silence : faults.silences(device, from.toEpochMilli(), to.toEpochMilli())) {
            if (silence.to() - silence.from() < SHORTEST_SILENCE_MILLIS) {
                continue;
            }
            Instant begin = Instant.ofEpochMilli(silence.from());
            Instant end = Instant.ofEpochMilli(silence.to());
            if (begin.isAfter(answering)) {
                spans.add(new PastSpan(device.number(), answering, begin, Condition.ANSWERING));
            }
            spans.add(new PastSpan(device.number(), begin, end, Condition.SILENT));
            answering = end;
        }
        if (to.isAfter(answering)) {
            spans.add(new PastSpan(device.number(), answering, to, Condition.ANSWERING));
        }
        return spans;
    }

    /** A wrong community meets silence; only version 3 says no. */
    private Condition refusal() {
        return device.credential() instanceof DemoCredential.User ? Condition.REFUSING : Condition.SILENT;
    }
}
