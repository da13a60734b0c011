package org.roundsman.demo;

/**
 * Something with a cable that nobody polls: a till, a printer.
 *
 * @param port number of the switch port
 * @param mac its address, 6 octets as a number
 * @param label what the port's description says
 */
public record DemoStation(int port, long mac, String label) {}
