package org.roundsman.demo;

/**
 * One SSID of a site.
 *
 * @param purpose {@code staff} or {@code guest}
 */
public record DemoNetwork(String ssid, String purpose) {}
