package org.roundsman.claims;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * A claim under warranty for one unit.
 *
 * @param deviceId the place where the unit stood; empty where it stood in none, or the place left the fleet
 * @param alarmId from which it was opened, if from one
 * @param changedAt last change of the state
 * @param newUnitId what took its place, where that is known
 * @param newSerial of that unit, or empty
 */
public record Claim(
        long id,
        long customerId,
        String customer,
        long unitId,
        OptionalLong siteId,
        OptionalLong deviceId,
        OptionalLong alarmId,
        ClaimState state,
        Instant openedAt,
        String openedBy,
        Instant changedAt,
        Known known,
        Papers papers,
        OptionalLong newUnitId,
        String newSerial) {

    /**
     * What was known when the claim was opened; never changed.
     *
     * @param place name, place and site in words
     * @param fault what a person says is wrong
     * @param terms what is promised
     * @param cover whether the unit was covered on that day
     * @param derivation how that was worked out, step by step
     * @param evidence what is at hand to prove the purchase
     * @param failure what the readings of the last 30 days say
     */
    public record Known(
            String serial,
            String model,
            String place,
            ZoneId zone,
            String fault,
            String terms,
            String cover,
            List<String> derivation,
            List<String> evidence,
            List<String> failure) {

        /** IANA name of the time zone of the place. */
        public String zoneName() {
            return zone.getId();
        }
    }

    /**
     * What passes between us and the maker or supplier.
     *
     * @param party to whom the claim is made, or empty
     * @param reference their number for it, or empty
     * @param shippedOn when the unit was sent
     * @param tracking the number of the parcel, or empty
     */
    public record Papers(String party, String reference, Optional<LocalDate> shippedOn, String tracking) {}

    /** Whether something can still come of it. */
    public boolean unfinished() {
        return state != ClaimState.CLOSED;
    }
}
