package org.roundsman.readings;

/**
 * The radio with the highest channel utilisation.
 *
 * @param utilisation per cent
 */
public record BusiestRadio(long deviceId, String device, int number, double utilisation) {}
