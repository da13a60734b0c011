package org.roundsman.demo.invent;

import java.util.ArrayList;
import java.util.List;
import org.roundsman.demo.Band;
import org.roundsman.demo.DemoModel;
import org.roundsman.demo.DemoRadio;
import org.roundsman.demo.model.Lot;

/** Gives the radios of an access point their channels and power. */
final class RadioPlacing {

    private static final int[] CHANNELS_24 = {1, 6, 11};
    private static final int[] CHANNELS_5 = {36, 52, 100, 116};
    private static final int[] CHANNELS_5_OUTDOOR = {100, 116, 132};
    private static final int[] CHANNELS_6 = {5, 21, 37, 53};

    private RadioPlacing() {}

    static List<DemoRadio> radios(long seed, DemoModel model, long mac, int number) {
        List<DemoRadio> radios = new ArrayList<>();
        for (int i = 0; i < model.bands().size(); i++) {
            Band band = model.bands().get(i);
            int[] channels = channels(band, model.outdoor());
            int channel = channels[Lot.below(Lot.key(seed, 320 + i, number), channels.length)];
            int power = (band == Band.BAND_24 ? 140 : 170)
                    + 5 * Lot.below(Lot.key(seed, 330 + i, number), 7)
                    + (model.outdoor() ? 30 : 0);
            radios.add(new DemoRadio(i + 1, "radio " + (i + 1), mac + 1 + i, band, channel, width(band), power));
        }
        return radios;
    }

    private static int width(Band band) {
        return switch (band) {
            case BAND_24 -> 20;
            case BAND_5 -> 40;
            case BAND_6 -> 80;
        };
    }

    private static int[] channels(Band band, boolean outdoor) {
        return switch (band) {
            case BAND_24 -> CHANNELS_24;
            case BAND_5 -> outdoor ? CHANNELS_5_OUTDOOR : CHANNELS_5;
            case BAND_6 -> CHANNELS_6;
        };
    }
}
