package org.roundsman.discovery;

/** A sweep was started, cancelled or resumed, and the change is committed. */
public record SweepsChanged() {}
