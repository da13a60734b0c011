package org.roundsman.demo;

/**
 * One SSID of a site.
 *
 * @param purpose {@code staff} or {@code guest}
 */
public record DemoNetwork(String ssid, String purpose) {

    /** SSID of the network that comes with {@link Fault#NETWORK_ADDED}. */
    public static final String ADDED = "Open Day";

    /** SSID of the open network for setting up, which comes with {@link Fault#SETUP_NETWORK}. */
    public static final String SETUP = "Setup Tamarack";
}
