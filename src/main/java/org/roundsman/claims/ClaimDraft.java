package org.roundsman.claims;

/**
 * A claim as entered. It is about the unit at a device, at the device of an alarm, or a unit by itself.
 *
 * @param deviceId null where an alarm or a unit is named
 * @param alarmId null where it comes from no alarm
 * @param unitId null where the unit is the one that stands at the device now
 * @param serial of the unit at the device, where the device tells none; else empty
 * @param fault what is wrong with it
 * @param party maker or supplier that it is made to, or empty
 */
public record ClaimDraft(Long deviceId, Long alarmId, Long unitId, String serial, String fault, String party) {}
