package org.roundsman.warranty;

/** Purchases or contracts were changed, and the change is committed. */
public record CoverChanged() {}
