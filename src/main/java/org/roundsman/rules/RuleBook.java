package org.roundsman.rules;

import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.TransactionPhase;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.roundsman.alarms.AlarmType;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.FleetChanged;
import org.roundsman.fleet.InputRejected;
import org.roundsman.rules.store.OverrideTable;
import org.roundsman.rules.store.OverrideTable.Target;
import org.roundsman.rules.store.OverrideTable.Writing;

/** Keeps the values of the rules: shipped ones, and what people laid over them. Thread-safe. */
@ApplicationScoped
public class RuleBook {

    /** No rule looks further back: after a start, so many readings are gone through again. */
    public static final Duration LONGEST_MEMORY = Duration.ofHours(6);

    private static final int LONGEST_REASON = 500;

    /** Whoever hears of a change and asks at once must get the new values. */
    private static final int FIRST = 10;

    private final OverrideTable table;
    private final AuditTrail audit;
    private final Clock clock;
    private final Event<RulesChanged> changed;
    private final AtomicInteger generation = new AtomicInteger();
    private volatile Loaded loaded = new Loaded(-1, RuleSet.shipped());

    /** A snapshot, and the generation of changes that it was read in. */
    private record Loaded(int generation, RuleSet set) {}

    @Inject
    RuleBook(OverrideTable table, AuditTrail audit, Clock clock, Event<RulesChanged> changed) {
        this.table = table;
        this.audit = audit;
        this.clock = clock;
        this.changed = changed;
    }

    /** The values as they are now. Cheap; a snapshot that does not change. */
    public RuleSet current() {
        Loaded known = loaded;
        int now = generation.get();
        if (known.generation != now) {
            known = new Loaded(now, new RuleSet(table.all()));
            loaded = known;
        }
        return known.set;
    }

    /**
     * What somebody would save, laid out but not saved: for trying it over the past.
     *
     * @throws InputRejected as {@link #save} does, but that no reason is wanted
     */
    public RuleSet tried(CustomerScope scope, Wish wish) {
        Target target = target(scope, wish);
        Map<RuleField, String> good = checked(wish, target, false);
        List<RuleOverride> others = table.all().stream()
                .filter(one ->
                        one.type() != wish.type() || one.level() != wish.level() || one.targetId() != target.id())
                .toList();
        List<RuleOverride> all = new ArrayList<>(others);
        all.add(new RuleOverride(
                0,
                wish.type(),
                wish.level(),
                target.id(),
                target.name(),
                target.customerId(),
                good,
                "",
                0,
                "",
                clock.instant()));
        return new RuleSet(all);
    }

    /**
     * What somebody wants to set.
     *
     * @param targetId of the customer, site, model or device; 0 for all
     * @param fields as entered; blank ones are left to what lies below
     * @param reason why
     */
    public record Wish(AlarmType type, RuleLevel level, long targetId, Map<RuleField, String> fields, String reason) {

        public Wish {
            fields = fields.isEmpty() ? Map.of() : new EnumMap<>(fields);
        }
    }

    /** All overrides in the scope, by type and level; those for all and for models are everybody's. */
    public List<RuleOverride> overrides(CustomerScope scope) {
        return table.all().stream()
                .filter(one -> one.customerId() == 0 || scope.includes(one.customerId()))
                .toList();
    }

    /** Those of one rule. */
    public List<RuleOverride> overrides(CustomerScope scope, AlarmType type) {
        return overrides(scope).stream().filter(one -> one.type() == type).toList();
    }

    public Optional<RuleOverride> find(CustomerScope scope, long id) {
        return table.find(id).filter(one -> one.customerId() == 0 || scope.includes(one.customerId()));
    }

    /**
     * Saves values for somebody, in place of what was set there before.
     *
     * @param basedOn the version that the person saw; 0 when nothing was set there
     * @throws InputRejected naming each field that cannot be taken, or {@code basedOn} when somebody else changed it
     *     meanwhile
     */
    @Transactional
    public RuleOverride save(CustomerScope scope, Wish wish, int basedOn) {
        Target target = target(scope, wish);
        Map<RuleField, String> good = checked(wish, target, true);
        Optional<RuleOverride> before = table.find(wish.type(), wish.level(), target.id());
        if (before.map(RuleOverride::version).orElse(0) != basedOn) {
            throw changedMeanwhile(before);
        }
        Writing writing = new Writing(good, wish.reason().strip(), audit.actor().name(), clock.instant());
        boolean done = before.isEmpty()
                ? table.add(wish.type(), target, writing)
                : table.change(before.get().id(), basedOn, writing);
        if (!done) {
            throw changedMeanwhile(table.find(wish.type(), wish.level(), target.id()));
        }
        RuleOverride after = table.find(wish.type(), wish.level(), target.id()).orElseThrow();
        if (before.isEmpty()) {
            audit.added(subject(after), fields(after));
        } else {
            audit.changed(subject(after), fields(before.get()), fields(after));
        }
        changed.fire(new RulesChanged());
        return after;
    }

    /**
     * Takes values back: what lies below holds again.
     *
     * @param basedOn the version that the person saw
     * @throws InputRejected when it is not there any more, or {@code basedOn} when somebody else changed it meanwhile
     */
    @Transactional
    public void remove(CustomerScope scope, long id, int basedOn) {
        RuleOverride before = find(scope, id)
                .orElseThrow(() -> new InputRejected(Map.of("id", "these values are not there any more")));
        if (before.version() != basedOn || !table.remove(id, basedOn)) {
            throw changedMeanwhile(table.find(id));
        }
        audit.did("removed", subject(before));
        changed.fire(new RulesChanged());
    }

    /** What was changed is committed. */
    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) @Priority(FIRST) RulesChanged event) {
        generation.incrementAndGet();
    }

    /** With a customer, site, model or device its overrides go. */
    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) @Priority(FIRST) FleetChanged event) {
        generation.incrementAndGet();
    }

    private Target target(CustomerScope scope, Wish wish) {
        Target target = table.target(wish.level(), wish.targetId())
                .orElseThrow(() -> new InputRejected(
                        Map.of("targetId", "this " + wish.level().word() + " is not there")));
        boolean allowed = target.customerId() == 0 ? scope.onlyCustomer() == null : scope.includes(target.customerId());
        if (!allowed) {
            throw new InputRejected(Map.of("targetId", "this " + wish.level().word() + " is not there"));
        }
        return target;
    }

    private Map<RuleField, String> checked(Wish wish, Target target, boolean saving) {
        RuleTexts texts = RuleTexts.read(ShippedRules.of(wish.type()), wish.fields());
        RuleTarget all = RuleTarget.service();
        texts.checkTogether(
                target.level() == RuleLevel.ALL
                        ? ShippedRules.of(wish.type()).fields()
                        : current().texts(wish.type(), all));
        Map<String, String> faults = new LinkedHashMap<>(texts.faults());
        if (texts.good().isEmpty() && faults.isEmpty()) {
            faults.put("fields", "set at least one value");
        }
        if (saving
                && (wish.reason().isBlank()
                        || wish.reason().length() > LONGEST_REASON
                        || wish.reason().indexOf('\0') >= 0)) {
            faults.put("reason", "say why, in at most " + LONGEST_REASON + " characters");
        }
        if (wish.level() != RuleLevel.ALL && !ShippedRules.of(wish.type()).hasTargets()) {
            faults.put("level", "this rule is about the service itself: it has values for all only");
        }
        if (!faults.isEmpty()) {
            throw new InputRejected(faults);
        }
        return texts.good();
    }

    private static InputRejected changedMeanwhile(Optional<RuleOverride> now) {
        return new InputRejected(Map.of(
                "basedOn",
                now.map(one -> one.author() + " changed these values meanwhile (version " + one.version()
                                + "). Nothing was saved: look at them and save again.")
                        .orElse("somebody took these values back meanwhile. Nothing was saved: look and save again.")));
    }

    private static Subject subject(RuleOverride one) {
        String where = one.level() == RuleLevel.ALL ? "all" : one.level().word() + " " + one.targetName();
        return new Subject(
                "rule", one.id(), one.type().title() + ", " + where, one.customerId() == 0 ? null : one.customerId());
    }

    private static FieldSet fields(RuleOverride one) {
        FieldSet set = new FieldSet();
        for (RuleField field : RuleField.values()) {
            set.with(field.key(), one.fields().get(field));
        }
        return set.with("reason", one.reason());
    }
}
