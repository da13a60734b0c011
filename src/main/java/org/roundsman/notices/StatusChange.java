package org.roundsman.notices;

import java.time.Instant;
import java.util.Optional;
import org.roundsman.alarms.Severity;

/**
 * A status change of an alarm.
 *
 * @param id rises in the order of commits
 * @param severity empty where it cleared
 */
public record StatusChange(long id, long alarmId, long episodeId, Instant at, Optional<Severity> severity) {}
