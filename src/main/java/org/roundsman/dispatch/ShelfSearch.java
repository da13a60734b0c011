package org.roundsman.dispatch;

import java.time.YearMonth;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What to look for among kept reports.
 *
 * @param month reports whose first day lies in it; empty for all
 */
public record ShelfSearch(OptionalLong customerId, Optional<YearMonth> month, Optional<ReportState> state) {}
