package org.roundsman.profiles;

/** Other profiles are in use than before, and that is committed. */
public record ProfilesChanged() {}
