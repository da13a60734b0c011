package org.roundsman.claims;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;
import org.roundsman.claims.Claim.Papers;
import org.roundsman.claims.ClaimSubjects.About;
import org.roundsman.claims.store.ClaimTable;
import org.roundsman.claims.store.UnitTable;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;

/**
 * Opens claims and moves them on. What was known of the unit when a claim was opened stays in it as it was. Every method
 * throws {@link InputRejected} with a fault of {@code id} when the claim is not there or lies outside the scope.
 */
@ApplicationScoped
@Transactional
public class Claims {

    private static final int LONGEST = 2_000;
    private static final int EARLIEST = 1990;

    private final ClaimTable table;
    private final UnitTable units;
    private final ClaimSubjects subjects;
    private final AuditTrail audit;
    private final Clock clock;

    @Inject
    Claims(DataSource database, ClaimSubjects subjects, AuditTrail audit, Clock clock) {
        this.table = new ClaimTable(database);
        this.units = new UnitTable(database);
        this.subjects = subjects;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * What a claim would be about and what would stand in it, without opening one.
     *
     * @throws InputRejected when what is named is not there
     */
    public Claim look(CustomerScope scope, ClaimDraft draft) {
        return fresh(draft, subjects.about(scope, draft, false));
    }

    /**
     * Opens a claim.
     *
     * @throws InputRejected naming each field that cannot be taken; {@code unit} when a claim of that unit goes on; the empty
     *     field when another unit than the entered one is known to stand there, or was entered at the same moment
     */
    public Claim open(CustomerScope scope, ClaimDraft draft) {
        new EntryCheck()
                .text("fault", draft.fault(), 1, LONGEST)
                .text("party", draft.party(), 0, 120)
                .done();
        About about = subjects.about(scope, draft, true);
        units.hold(about.unit().id());
        table.open(about.unit().id()).ifPresent(one -> {
            throw EntryCheck.refused(
                    "unit",
                    "claim " + one.id() + " of this unit is " + one.state().word() + " and not closed yet");
        });
        Claim fresh = fresh(draft, about);
        long id = table.add(fresh);
        table.change(id, fresh.openedAt(), fresh.openedBy(), Optional.empty(), ClaimState.OPENED, "");
        Claim made = table.find(null, id).orElseThrow();
        audit.added(
                subject(made),
                fields(made)
                        .with("unit", made.known().serial())
                        .with("fault", made.known().fault()));
        return made;
    }

    private Claim fresh(ClaimDraft draft, About about) {
        Instant now = now();
        return new Claim(
                0,
                about.customerId(),
                "",
                about.unit().id(),
                about.siteId(),
                about.deviceId(),
                draft.alarmId() == null ? OptionalLong.empty() : OptionalLong.of(draft.alarmId()),
                ClaimState.OPENED,
                now,
                audit.actor().name(),
                now,
                subjects.known(about, draft.fault() == null ? "" : draft.fault().strip(), now),
                new Papers(draft.party() == null ? "" : draft.party().strip(), "", Optional.empty(), ""),
                OptionalLong.empty(),
                "");
    }

    /**
     * Moves a claim to another state.
     *
     * @param note what is to be known about it, or empty
     * @throws InputRejected with a fault of {@code state} that says in words why it cannot go there
     */
    public Claim move(CustomerScope scope, long id, ClaimState to, String note) {
        Claim before = hold(scope, id);
        new EntryCheck()
                .text("note", note, 0, LONGEST)
                .that("state", to != null, "say which state comes next")
                .done();
        before.state().against(to).ifPresent(why -> {
            throw EntryCheck.refused("state", why);
        });
        Instant now = now();
        table.state(id, to, now);
        table.change(id, now, audit.actor().name(), Optional.of(before.state()), to, note.strip());
        return noted(before, note.strip());
    }

    /**
     * Notes something, without another state.
     *
     * @throws InputRejected naming what cannot be taken
     */
    public Claim note(CustomerScope scope, long id, String note) {
        Claim claim = hold(scope, id);
        new EntryCheck().text("note", note, 1, LONGEST).done();
        table.change(id, now(), audit.actor().name(), Optional.of(claim.state()), claim.state(), note.strip());
        return noted(claim, note.strip());
    }

    /**
     * Enters what passes between us and the maker or supplier.
     *
     * @throws InputRejected naming each field that cannot be taken
     */
    public Claim papers(CustomerScope scope, long id, Papers papers) {
        Claim before = hold(scope, id);
        new EntryCheck()
                .text("party", papers.party(), 0, 120)
                .text("reference", papers.reference(), 0, 120)
                .text("tracking", papers.tracking(), 0, 300)
                .that(
                        "shippedOn",
                        papers.shippedOn()
                                .filter(day -> day.getYear() < EARLIEST
                                        || day.isAfter(
                                                now().atZone(before.known().zone())
                                                        .toLocalDate()
                                                        .plusDays(31)))
                                .isEmpty(),
                        "a day such as 2026-03-29, at most a month ahead")
                .done();
        table.papers(
                id,
                new Papers(
                        papers.party().strip(),
                        papers.reference().strip(),
                        papers.shippedOn(),
                        papers.tracking().strip()));
        return noted(before, "");
    }

    private Claim noted(Claim before, String note) {
        Claim after = table.find(null, before.id()).orElseThrow();
        audit.changed(subject(after), fields(before), fields(after).with("note", note));
        return after;
    }

    private Claim hold(CustomerScope scope, long id) {
        return table.hold(scope.onlyCustomer(), id)
                .orElseThrow(() -> EntryCheck.refused("id", "there is no such claim"));
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MILLIS);
    }

    private static Subject subject(Claim claim) {
        return new Subject("claim", claim.id(), claim.known().serial(), claim.customerId());
    }

    private static FieldSet fields(Claim claim) {
        return new FieldSet()
                .with("state", claim.state().word())
                .with("made to", claim.papers().party())
                .with("their reference", claim.papers().reference())
                .with(
                        "shipped on",
                        claim.papers().shippedOn().map(Object::toString).orElse(""))
                .with("tracking", claim.papers().tracking());
    }
}
