package org.roundsman.web.claims;

import java.util.List;
import org.roundsman.claims.Claim;

/**
 * What the page of a claim shows.
 *
 * @param steps that may come next
 * @param deviceId the place, 0 where there is none
 * @param alarmId the alarm it was opened from, 0 where there is none
 * @param newUnitId what took its place, 0 where nothing did
 * @param opened when and by whom
 * @param papers what was entered last, right or wrong
 */
record ClaimView(
        Claim claim,
        ClaimWords.Line line,
        List<ClaimWords.Step> steps,
        List<ClaimWords.Change> changes,
        long deviceId,
        long alarmId,
        long newUnitId,
        String opened,
        PapersForm papers) {}
