package org.roundsman.dispatch;

import java.util.Optional;

/**
 * A customer and the report of a month.
 *
 * @param sites how many it has
 * @param report the newest revision
 */
public record DeskLine(long customerId, String customer, int sites, Optional<KeptReport> report, ReportPlan plan) {}
