package org.roundsman.web.claims;

import java.time.ZoneId;
import java.util.Arrays;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.claims.ReplacementDraft;
import org.roundsman.claims.ReplacementDraft.Old;

/** What the form of a replacement sent, as text, to be shown again when something in it is wrong. */
record ReplaceForm(
        @RestForm String spare,
        @RestForm String serial,
        @RestForm String model,
        @RestForm String at,
        @RestForm String old,
        @RestForm String where,
        @RestForm String note,
        @RestForm String claim) {

    ReplaceForm shown() {
        return new ReplaceForm(
                Entry.text(spare),
                Entry.text(serial),
                Entry.text(model),
                Entry.text(at),
                Entry.text(old),
                Entry.text(where),
                Entry.text(note),
                Entry.text(claim));
    }

    ReplacementDraft draft(long deviceId, ZoneId zone) {
        Old fate = Arrays.stream(Old.values())
                .filter(one -> one.name().equals(old))
                .findFirst()
                .orElse(null);
        Entry.Where lies = fate == Old.SPARE ? Entry.Where.of(where) : new Entry.Where(null, null);
        return new ReplacementDraft(
                deviceId,
                Entry.id("spare", spare),
                Entry.text(serial),
                Entry.id("model", model),
                Entry.moment("at", at, zone),
                fate,
                lies.room(),
                lies.site(),
                Entry.text(note),
                Entry.id("claim", claim));
    }
}
