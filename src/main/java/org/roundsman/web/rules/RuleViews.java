package org.roundsman.web.rules;

import jakarta.enterprise.context.RequestScoped;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmType;
import org.roundsman.people.Role;
import org.roundsman.rules.Rule;
import org.roundsman.rules.RuleBook;
import org.roundsman.rules.RuleField;
import org.roundsman.rules.RuleLevel;
import org.roundsman.rules.RuleOverride;
import org.roundsman.rules.RuleTarget;
import org.roundsman.rules.RuleTargets;
import org.roundsman.rules.ShippedRules;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** Puts together what the pages of rules show. */
@RequestScoped
class RuleViews {

    private static final int TRY_DAYS = 28;

    private final RuleBook book;
    private final RuleTargets targets;
    private final AlarmBook alarms;
    private final Visitor visitor;
    private final Clock clock;

    RuleViews(RuleBook book, RuleTargets targets, AlarmBook alarms, Visitor visitor, Clock clock) {
        this.book = book;
        this.targets = targets;
        this.alarms = alarms;
        this.visitor = visitor;
        this.clock = clock;
    }

    /** One rule in the list. */
    record Line(String id, String title, String about, String values, boolean differs, String overrides, String open) {}

    /** Values that somebody set. */
    record SetLine(
            long id, String level, String name, String values, String reason, String by, int version, String address) {}

    /** A rule with its explanation. */
    record Whole(
            Line line,
            AlarmType type,
            Rule rule,
            String shipped,
            List<SetLine> sets,
            boolean writes,
            String changeAll) {}

    /** One field of the form. */
    record Field(RuleField field, String key, String label, String value, String below, String hint, String fault) {
        public boolean isSwitch() {
            return field.form() == RuleField.Form.SWITCH;
        }

        public boolean isSeverity() {
            return field.form() == RuleField.Form.SEVERITY;
        }

        public boolean isWrong() {
            return !fault.isEmpty();
        }
    }

    /** The form of values. */
    record Form(
            AlarmType type,
            String place,
            String level,
            long target,
            int basedOn,
            List<Field> fields,
            String reason,
            String from,
            String to,
            Faults faults,
            boolean tries) {}

    boolean writes() {
        Role role = visitor.person().role();
        return role == Role.TECHNICIAN || role == Role.OWNER;
    }

    List<Line> lines() {
        Map<AlarmType, Integer> open = open();
        List<RuleOverride> overrides = book.overrides(visitor.scope());
        return ShippedRules.all().stream()
                .map(rule -> line(rule, overrides, open))
                .toList();
    }

    private Map<AlarmType, Integer> open() {
        Map<AlarmType, Integer> open = new EnumMap<>(AlarmType.class);
        alarms.open(visitor.scope()).forEach(alarm -> open.merge(alarm.key().type(), 1, Integer::sum));
        return open;
    }

    private Line line(Rule rule, List<RuleOverride> overrides, Map<AlarmType, Integer> open) {
        AlarmType type = rule.type();
        long own = overrides.stream()
                .filter(one -> one.type() == type && one.level() != RuleLevel.ALL)
                .count();
        Map<RuleField, String> all = book.current().texts(type, RuleTarget.service());
        String values = RuleWords.of(rule, all, unsaid(type, RuleTarget.service()));
        int count = open.getOrDefault(type, 0);
        return new Line(
                type.id(),
                type.title(),
                type.meaning(),
                values,
                !all.equals(rule.fields()) || !values.equals(RuleWords.shipped(rule)),
                own == 0 ? "" : Words.many(own, "place", "places"),
                count == 0 ? "" : Words.many(count, "alarm", "alarms"));
    }

    /** Whether the severity that holds there is the shipped one. */
    private boolean unsaid(AlarmType type, RuleTarget target) {
        return book.current()
                .origins(type, target)
                .getOrDefault(RuleField.SEVERITY, Optional.empty())
                .isEmpty();
    }

    Whole whole(AlarmType type) {
        Rule rule = ShippedRules.of(type);
        List<RuleOverride> overrides = book.overrides(visitor.scope(), type);
        return new Whole(
                line(rule, overrides, open()),
                type,
                rule,
                RuleWords.shipped(rule),
                overrides.stream().map(this::set).toList(),
                writes(),
                address(type, RuleLevel.ALL, 0));
    }

    private SetLine set(RuleOverride one) {
        Rule rule = ShippedRules.of(one.type());
        return new SetLine(
                one.id(),
                one.level().word(),
                one.level() == RuleLevel.ALL ? "everything" : one.targetName(),
                RuleWords.of(rule, one.fields()),
                one.reason(),
                one.author() + ", " + Words.moment(one.at(), ZoneOffset.UTC) + " UTC",
                one.version(),
                address(one.type(), one.level(), one.targetId()));
    }

    static String address(AlarmType type, RuleLevel level, long target) {
        return "/rules/" + type.id() + "/values?level=" + level.word() + "&target=" + target;
    }

    /** The form for a place; empty when there is no such place. */
    Optional<Form> form(AlarmType type, RuleLevel level, long target) {
        return targets.find(visitor.scope(), level, target).map(found -> {
            Optional<RuleOverride> set = book.overrides(visitor.scope(), type).stream()
                    .filter(one -> one.level() == level && one.targetId() == target)
                    .findFirst();
            Map<RuleField, String> entered = new EnumMap<>(RuleField.class);
            set.ifPresent(one -> one.fields()
                    .forEach((field, text) -> entered.put(
                            field, field.form() == RuleField.Form.SECONDS ? RuleWords.minutes(text) : text)));
            LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
            return form(
                    type,
                    found,
                    new Entered(
                            entered,
                            set.map(RuleOverride::reason).orElse(""),
                            set.map(RuleOverride::version).orElse(0),
                            today.minusDays(TRY_DAYS).toString(),
                            today.toString()),
                    Faults.NONE);
        });
    }

    /** The form again, with what was entered and what is wrong with it. */
    Optional<Form> refused(AlarmType type, ValuesForm sent, Faults faults) {
        Entered entered = new Entered(
                sent.entered(),
                ValuesForm.text(sent.reason()),
                sent.version(),
                ValuesForm.text(sent.from()),
                ValuesForm.text(sent.to()));
        return RuleLevel.of(ValuesForm.text(sent.level()))
                .flatMap(level -> targets.find(visitor.scope(), level, sent.targetId()))
                .map(found -> form(type, found, entered, faults));
    }

    private record Entered(Map<RuleField, String> fields, String reason, int basedOn, String from, String to) {}

    private Form form(AlarmType type, RuleTargets.Found found, Entered entered, Faults faults) {
        Rule rule = ShippedRules.of(type);
        Map<RuleField, String> below = below(type, found);
        List<Field> fields = new ArrayList<>();
        for (RuleField field : rule.settable()) {
            boolean minutes = field.form() == RuleField.Form.SECONDS;
            String under = minutes ? RuleWords.minutes(below.get(field)) : below.get(field);
            if (field == RuleField.SEVERITY && shippedBelow(type, found)) {
                under = RuleWords.severity(rule, under);
            }
            fields.add(new Field(
                    field,
                    field.key(),
                    field.title() + unit(rule, field),
                    entered.fields.getOrDefault(field, ""),
                    under,
                    hint(rule, field),
                    faults.at(field.key())));
        }
        return new Form(
                type,
                found.level() == RuleLevel.ALL ? "everything" : found.level().word() + " " + found.name(),
                found.level().word(),
                found.id(),
                entered.basedOn,
                fields,
                entered.reason,
                entered.from,
                entered.to,
                faults,
                rule.hasPast());
    }

    /** What holds there without the values of that place itself. */
    private Map<RuleField, String> below(AlarmType type, RuleTargets.Found found) {
        if (found.level() == RuleLevel.ALL) {
            return ShippedRules.of(type).fields();
        }
        return book.current().texts(type, without(found));
    }

    private boolean shippedBelow(AlarmType type, RuleTargets.Found found) {
        return found.level() == RuleLevel.ALL || unsaid(type, without(found));
    }

    private RuleTarget without(RuleTargets.Found found) {
        RuleTarget target =
                targets.below(visitor.scope(), found.level(), found.id()).orElse(RuleTarget.service());
        return switch (found.level()) {
            case ALL, MODEL, CUSTOMER -> RuleTarget.service();
            case SITE -> new RuleTarget(target.customerId(), 0, 0, 0);
            case DEVICE -> new RuleTarget(target.customerId(), target.siteId(), target.modelId(), 0);
        };
    }

    private static String unit(Rule rule, RuleField field) {
        return switch (field.form()) {
            case SECONDS -> ", minutes";
            case LEVEL, FIGURE ->
                rule.kind() == Rule.Kind.COUNT ? ", times" : rule.unit().isEmpty() ? "" : ", " + rule.unit();
            default -> "";
        };
    }

    private static String hint(Rule rule, RuleField field) {
        return switch (field) {
            case CLEAR ->
                "Higher levels clear at the same distance from their own threshold."
                        + (rule.low() ? " Low figures are bad here." : "");
            case SEVERITY ->
                rule.carrying().isPresent()
                        ? "A severity that is set holds for access points, switches and gateways alike."
                        : "";
            case WORDS -> "Separated by commas; capitals do not matter.";
            default -> "";
        };
    }

    /** Places that fit a search, with the address of the form of each. */
    record Choice(String level, String name, String address) {}

    List<Choice> choices(AlarmType type, String words) {
        return words.isBlank()
                ? List.of()
                : targets.search(visitor.scope(), words, 50).stream()
                        .map(found -> new Choice(
                                found.level().word(), found.name(), address(type, found.level(), found.id())))
                        .toList();
    }

    Instant now() {
        return clock.instant();
    }
}
