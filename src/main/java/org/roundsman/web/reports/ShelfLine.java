package org.roundsman.web.reports;

/**
 * A report in a list.
 *
 * @param period of which days it is, in words
 * @param revision in words; says so where a later one replaces it
 * @param sent when, or empty
 */
record ShelfLine(
        long id, long customerId, String customer, String period, String revision, StateWord state, String sent) {}
