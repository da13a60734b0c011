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
public record DemoRadio(int number, String label, long mac, Band band, int channel, int width, int powerTenths) {}
