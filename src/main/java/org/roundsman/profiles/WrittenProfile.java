package org.roundsman.profiles;

import java.time.Instant;
import java.util.Optional;

/**
 * A profile that people write here.
 *
 * @param latest number of its latest version, from 1
 * @param inUse number of the version in use, empty where none is
 * @param author who saved the latest version
 * @param at when
 */
public record WrittenProfile(long id, String name, int latest, Optional<Integer> inUse, String author, Instant at) {}
