package org.roundsman.firmware;

/** What is decided about firmware was changed and the change is committed. */
public record FirmwarePolicyChanged() {}
