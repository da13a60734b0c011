package org.roundsman.demo;

import java.time.DayOfWeek;
import java.time.LocalTime;

/**
 * Hours in which a site needs its Wi-Fi, in its local time.
 *
 * @param closes midnight means the end of the day
 */
public record DemoHours(DayOfWeek weekday, LocalTime opens, LocalTime closes) {}
