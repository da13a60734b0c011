package org.roundsman.demo;

/**
 * One radio of an invented access point.
 *
 * @param number from 1
 * @param label what the device calls it
 * @param mac its address, 6 octets as a number
 * @param channel primary channel
 * @param width MHz
 * @param powerTenths transmit power in 0.1 dBm
 */
public record DemoRadio(int number, String label, long mac, Band band, int channel, int width, int powerTenths) {

    private static final int WITHOUT_RADAR = 36;

    /** Whether radar has precedence on its channel: 52 to 144 at 5 GHz; the local regulator decides. */
    public boolean sharesWithRadar() {
        return band == Band.BAND_5 && channel >= 52 && channel <= 144;
    }

    /** The channel that it is on under those faults, given as bits. */
    public int channelUnder(int faults) {
        return Fault.RADAR_SEEN.in(faults) && sharesWithRadar() ? WITHOUT_RADAR : channel;
    }
}
