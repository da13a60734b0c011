package org.roundsman.measure;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * The bands of IEEE 802.11 and their channels. A channel number means something within its band only. Which channels
 * may be used where is the national regulator's to say, and is not known here. Formulas and channel lists from common
 * knowledge of IEEE 802.11, without its text.
 */
public enum Band {
    BAND_2_4(2.4, 2407, IntStream.rangeClosed(1, 14)),
    BAND_5(5, 5000, IntStream.concat(IntStream.concat(by4(36, 64), by4(100, 144)), by4(149, 177))),
    BAND_6(6, 5950, by4(1, 233));

    private static final int JAPANESE_CHANNEL = 14;
    private static final int JAPANESE_CENTRE = 2484;
    private static final int CLASS_136_CHANNEL = 2;
    private static final int CLASS_136_CENTRE = 5935;

    private final double gigahertz;
    private final int start;
    private final List<Integer> channels;

    Band(double gigahertz, int start, IntStream channels) {
        this.gigahertz = gigahertz;
        this.start = start;
        this.channels = channels.boxed().toList();
    }

    private static IntStream by4(int from, int to) {
        return IntStream.iterate(from, n -> n <= to, n -> n + 4);
    }

    /** The usual name as a number, as {@link Metric#BAND} stores it: 2.4, 5 or 6. */
    public double gigahertz() {
        return gigahertz;
    }

    /** The band with that name, if there is one. */
    public static Optional<Band> of(double gigahertz) {
        return Arrays.stream(values())
                .filter(band -> Math.abs(band.gigahertz - gigahertz) < 0.05)
                .findFirst();
    }

    /** The 20 MHz channels, ascending. In the 6 GHz band without channel 2, which only operating class 136 has. */
    public List<Integer> channels() {
        return channels;
    }

    /** Whether it is the number of a 20 MHz channel, channel 2 of operating class 136 included. */
    public boolean has(int channel) {
        return channels.contains(channel) || isClass136(channel);
    }

    /** Centre frequency of a 20 MHz channel in MHz; empty when the band has no such channel. */
    public OptionalInt centre(int channel) {
        return has(channel) ? OptionalInt.of(frequency(channel)) : OptionalInt.empty();
    }

    /**
     * Frequency that a channel number stands for in MHz, also for the centres of wider channels, such as 42 in the
     * 5 GHz band: whether there is such a channel is not checked.
     */
    public int frequency(int number) {
        if (this == BAND_2_4 && number == JAPANESE_CHANNEL) {
            return JAPANESE_CENTRE;
        }
        return isClass136(number) ? CLASS_136_CENTRE : start + 5 * number;
    }

    private boolean isClass136(int channel) {
        return this == BAND_6 && channel == CLASS_136_CHANNEL;
    }
}
