package org.roundsman.planned;

/** Planned work was added, changed, ended or cancelled. */
public record PlannedWorkChanged() {}
