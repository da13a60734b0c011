package org.roundsman.alarms;

import java.time.Instant;
import java.util.Optional;

/**
 * One status change (RFC 8632: status-change).
 *
 * @param id rises in the order in which changes were committed, so that a reader who remembers the last one misses none
 * @param severity empty where the alarm cleared
 * @param text what was seen then
 */
public record AlarmChange(
        long id, long alarmId, long episodeId, Instant at, Optional<Severity> severity, String text) {}
