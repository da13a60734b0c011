package org.roundsman.firmware.judge;

import org.roundsman.firmware.FirmwareStatus;

/**
 * A status with its reason, before pilot sites and exceptions are looked at.
 *
 * @param security it lacks a security fix
 * @param canBeExcepted an exception may stand in its place; not where nothing is known to except
 */
record Verdict(FirmwareStatus status, String reason, boolean security, boolean canBeExcepted) {

    /** Of any status but that nothing is known. */
    static Verdict of(FirmwareStatus status, String reason) {
        return new Verdict(status, reason, false, status != FirmwareStatus.CURRENT);
    }

    static Verdict unknown(String reason) {
        return new Verdict(FirmwareStatus.NOT_KNOWN, reason, false, false);
    }
}
