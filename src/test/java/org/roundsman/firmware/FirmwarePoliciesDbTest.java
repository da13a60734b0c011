package org.roundsman.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.roundsman.audit.Actor;
import org.roundsman.audit.AuditLog;
import org.roundsman.audit.AuditQuery;
import org.roundsman.audit.AuditTrail;
import org.roundsman.web.FleetFixture;
import org.roundsman.web.MarkedPlaces;

@QuarkusTest
class FirmwarePoliciesDbTest {

    @Inject
    FirmwarePolicies policies;

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Inject
    AuditTrail trail;

    @Inject
    AuditLog log;

    @Inject
    Clock clock;

    @Test
    void whatIsRemovedIsNotedWithItsFields() {
        FleetFixture.Place place = fixture.place("Saltmarsh");
        Actor actor =
                new Actor("mara-" + UUID.randomUUID().toString().substring(0, 8), 12L, Actor.Via.PAGE, "", "192.0.2.8");
        long line =
                places.number("insert into firmware_line (name) values ('Tamarack " + actor.name() + "') returning id");
        LocalDate day = LocalDate.now(clock).plusDays(9);
        long release = policies.save(
                        line, new ReleaseDraft(null, "6.4.2", Release.Stand.RECOMMENDED, "tried", null, null))
                .id();
        long minimum = policies.save(line, new MinimumDraft(null, "6.1.0", "TR-ADV-7", "remote"))
                .id();
        long exception = policies.except(line, new ExceptionDraft(place.customerId(), "6.1.0", "a till", day))
                .id();
        policies.addPilot(line, place.siteId());
        trail.as(actor, () -> {
            policies.removeRelease(line, release);
            policies.removeMinimum(line, minimum);
            policies.removeException(line, exception);
            policies.removePilot(line, place.siteId());
            return "";
        });
        assertThat(said(actor))
                .containsExactlyInAnyOrder(
                        "removed firmware release: version=6.4.2, decision=recommended, reason=tried",
                        "removed firmware minimum: version=6.1.0, identifier=TR-ADV-7, note=remote",
                        "removed firmware exception: customer=" + place.customer()
                                + ", version=6.1.0, reason=a till, last day=" + day,
                        "removed firmware pilot site: site=Pier of " + place.customer());
    }

    private List<String> said(Actor actor) {
        return log
                .find(new AuditQuery("", actor.name(), "", null, null, "", null, null), Optional.empty(), 100)
                .stream()
                .map(entry -> entry.action() + " " + entry.subject().kind() + ": "
                        + entry.changes().stream()
                                .map(change -> change.field() + "=" + change.old())
                                .collect(Collectors.joining(", ")))
                .toList();
    }
}
