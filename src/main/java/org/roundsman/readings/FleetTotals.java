package org.roundsman.readings;

/** The fleet in one line: access points by condition, and clients now. */
public record FleetTotals(
        int customers,
        int sites,
        int accessPoints,
        int answering,
        int silent,
        int refusing,
        int unwatched,
        int otherDevices,
        int otherTrouble,
        long clients) {}
