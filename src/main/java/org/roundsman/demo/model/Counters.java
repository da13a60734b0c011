package org.roundsman.demo.model;

import java.util.Arrays;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.Faults;

/**
 * The counters of one device since its last restart: exact integrals, in whole numbers, of gains that are constant
 * within a quarter hour. A pure function of device, time and faults however often it is asked: asking only moves the
 * remembered sum on. One thread at a time.
 */
public final class Counters {

    public static final long QUARTER_MILLIS = 900_000;
    public static final int OCTETS_IN = 0;
    public static final int OCTETS_OUT = 1;
    public static final int ERRORS = 2;
    private static final int FIRST_RADIO = 3;

    private final Usage usage;
    private final DemoDevice device;
    private final Faults faults;
    private final long[] sums;
    private final long[] gains;
    private long restart = Long.MIN_VALUE;
    private long pieceFrom;
    private long pieceTo;
    private long now;
    private int version;

    public Counters(Usage usage, DemoDevice device, Faults faults) {
        this.usage = usage;
        this.device = device;
        this.faults = faults;
        this.sums = new long[FIRST_RADIO + 2 * device.radios().size()];
        this.gains = new long[sums.length];
    }

    /** Place of a radio's delivered frames; radios count from 0. */
    public static int frames(int radio) {
        return FIRST_RADIO + 2 * radio;
    }

    /** Place of a radio's frames delivered after a retry. */
    public static int retried(int radio) {
        return FIRST_RADIO + 2 * radio + 1;
    }

    /** Moves to a time, counting from that restart. */
    public void move(long epochMilli, long lastRestart) {
        now = Math.max(epochMilli, lastRestart);
        if (lastRestart != restart || now < pieceFrom) {
            restart = lastRestart;
            Arrays.fill(sums, 0);
            begin(lastRestart);
        } else if (version != faults.version()) {
            // a fault switched by hand may split the piece that we are in
            begin(pieceFrom);
        }
        while (now >= pieceTo) {
            for (int i = 0; i < sums.length; i++) {
                sums[i] += gains[i] * (pieceTo - pieceFrom);
            }
            begin(pieceTo);
        }
    }

    private void begin(long from) {
        long quarter = Math.floorDiv(from, QUARTER_MILLIS);
        version = faults.version();
        pieceFrom = from;
        pieceTo = Math.min((quarter + 1) * QUARTER_MILLIS, faults.nextSwitch(device, from));
        usage.gains(quarter, faults.bits(device, from), gains);
    }

    /** The full count there, never less than before since the restart; wrap it to the width wanted. */
    public long count(int place) {
        long scaled = sums[place] + gains[place] * (now - pieceFrom);
        return scaled / (place <= OCTETS_OUT ? 1000L : 1_000_000L);
    }
}
