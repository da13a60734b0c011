package org.roundsman.web.firmware;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Map;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.firmware.ExceptionDraft;
import org.roundsman.firmware.LinePolicy;
import org.roundsman.firmware.MinimumDraft;
import org.roundsman.firmware.Release;
import org.roundsman.firmware.ReleaseDraft;
import org.roundsman.fleet.InputRejected;

/** What any of the forms of a line sent, as text, to be shown again when something in it is wrong. */
record ReleaseForm(
        @RestForm String version,
        @RestForm String model,
        @RestForm String stand,
        @RestForm String reason,
        @RestForm String withdrawnOn,
        @RestForm String releasedOn,
        @RestForm String identifier,
        @RestForm String customer,
        @RestForm String lastDay,
        @RestForm String site) {

    ReleaseForm {
        version = text(version);
        model = text(model);
        stand = text(stand);
        reason = text(reason);
        withdrawnOn = text(withdrawnOn);
        releasedOn = text(releasedOn);
        identifier = text(identifier);
        customer = text(customer);
        lastDay = text(lastDay);
        site = text(site);
    }

    private static String text(String value) {
        return value == null ? "" : value.strip();
    }

    private static ReleaseForm blank() {
        return new ReleaseForm("", "", "", "", "", "", "", "", "", "");
    }

    /** The form of the release with that id; blank where there is none. */
    static ReleaseForm of(LinePolicy policy, String id) {
        return policy.releases().stream()
                .filter(release -> String.valueOf(release.id()).equals(id))
                .findFirst()
                .map(ReleaseForm::of)
                .orElseGet(ReleaseForm::blank);
    }

    private static ReleaseForm of(Release release) {
        return new ReleaseForm(
                release.version(),
                release.modelId().isPresent() ? String.valueOf(release.modelId().getAsLong()) : "",
                release.stand().name(),
                release.reason(),
                release.withdrawnOn().map(LocalDate::toString).orElse(""),
                release.releasedOn().map(LocalDate::toString).orElse(""),
                "",
                "",
                "",
                "");
    }

    ReleaseDraft release() {
        Release.Stand decided = Arrays.stream(Release.Stand.values())
                .filter(one -> one.name().equals(stand))
                .findFirst()
                .orElse(null);
        return new ReleaseDraft(
                id("model", model),
                version,
                decided,
                reason,
                day("withdrawnOn", withdrawnOn),
                day("releasedOn", releasedOn));
    }

    MinimumDraft minimum() {
        return new MinimumDraft(id("model", model), version, identifier, reason);
    }

    ExceptionDraft exception() {
        return new ExceptionDraft(id("customer", customer), version, reason, day("lastDay", lastDay));
    }

    long siteId() {
        Long id = id("site", site);
        return id == null ? 0 : id;
    }

    private static Long id(String field, String text) {
        if (text.isEmpty()) {
            return null;
        }
        if (!text.matches("[0-9]{1,18}")) {
            throw new InputRejected(Map.of(field, "choose one of the list"));
        }
        return Long.valueOf(text);
    }

    private static LocalDate day(String field, String text) {
        try {
            return text.isEmpty() ? null : LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw new InputRejected(Map.of(field, "a day such as 2026-11-30"));
        }
    }
}
