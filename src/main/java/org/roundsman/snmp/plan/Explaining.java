package org.roundsman.snmp.plan;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.roundsman.measure.Metric;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Unit;
import org.roundsman.snmp.RawAnswer;
import org.roundsman.snmp.Visit;
import org.roundsman.snmp.Walk;
import org.roundsman.snmp.WalkReading.Explained;
import org.roundsman.snmp.WalkReading.Fate;
import org.roundsman.snmp.decode.RawAnswers;
import org.roundsman.snmp.profile.Measure;
import org.roundsman.snmp.profile.Profile;
import org.roundsman.snmp.profile.Table;
import org.roundsman.snmp.profile.Target;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.Variable;
import org.snmp4j.smi.VariableBinding;

/** Says of each line of each profile that applies what became of it, after a visit to a walk. */
final class Explaining {

    private static final Set<Metric> BY_ITSELF = EnumSet.of(Metric.UPTIME, Metric.CLIENTS);

    private final DeviceRecord record;
    private final Seen seen;
    private final Map<Measure, Set<OID>> chosen = new IdentityHashMap<>();
    private final Map<String, String> named = new HashMap<>();
    private final List<Explained> lines = new ArrayList<>();

    /**
     * What the visit saw.
     *
     * @param later whether it was the second one, so that counters may have become rates
     */
    record Seen(Walk walk, Visit visit, boolean later, RawAnswers names) {}

    /** One line of a profile for one subject. */
    private record Candidate(Profile profile, Measure measure, Table table, String who, List<OID> oids) {}

    Explaining(DeviceRecord record, Seen seen) {
        this.record = record;
        this.seen = seen;
        PollPlan plan = record.plan;
        Stream.of(
                        plan.device().stream(),
                        plan.radios().values().stream().flatMap(r -> r.figures().stream()),
                        plan.networks().stream().flatMap(n -> n.figures().stream()))
                .flatMap(figures -> figures)
                .forEach(figure -> chosen.computeIfAbsent(figure.measure(), m -> new HashSet<>())
                        .add(figure.parts().get(0).oid));
    }

    List<Explained> explain() {
        CandidateRows rows = new CandidateRows(record.found, seen.walk());
        for (Profile profile : record.found.profiles()) {
            for (boolean fallback : new boolean[] {false, true}) {
                profile.scalars().stream()
                        .filter(m -> m.fallback() == fallback)
                        .forEach(m -> explain(new Candidate(profile, m, null, "device", m.objects())));
                profile.tables().forEach(table -> table.measures().stream()
                        .filter(m -> m.fallback() == fallback)
                        .forEach(m -> rows(rows, profile, table, m)));
            }
        }
        addWhatTheProgramWorksOut();
        return withoutMissingThatOthersGive();
    }

    private void rows(CandidateRows rows, Profile profile, Table table, Measure measure) {
        List<CandidateRows.Row> found = rows.of(profile, table, measure);
        if (found.isEmpty()) {
            String who =
                    table.rows() == Subject.DEVICE ? "device" : table.rows() == Subject.RADIO ? "radios" : "networks";
            String why = table.pick() != null
                    ? "the pick " + table.pick() + " chose no row"
                    : "no such object: the walk has nothing below "
                            + measure.parts().get(0).toDottedString();
            lines.add(line(new Candidate(profile, measure, table, who, List.of()), Fate.MISSING, "", why));
        }
        found.forEach(row -> explain(new Candidate(profile, measure, table, row.who(), row.oids())));
    }

    private void explain(Candidate candidate) {
        if (candidate.measure().target() instanceof Target.OfMetric of) {
            metric(candidate, of.metric());
        } else {
            text(candidate);
        }
    }

    private void text(Candidate candidate) {
        Slot slot = new Slot(candidate.oids().get(0));
        slot.value = seen.walk().get(candidate.oids().get(0));
        String text = PlanMaking.text(candidate.measure(), List.of(slot));
        String key = candidate.measure().target().key() + " of " + candidate.who();
        if (text.isEmpty()) {
            String why = slot.value == null ? absent(slot.oid) : "the text is empty, or not what the line says it is";
            lines.add(line(candidate, Fate.MISSING, "", why));
        } else if (named.putIfAbsent(key, text) == null) {
            lines.add(line(candidate, Fate.GIVEN, text, ""));
        } else {
            lines.add(line(candidate, Fate.PASSED_OVER, "", "another line gives it first"));
        }
    }

    private void metric(Candidate candidate, Metric metric) {
        boolean mine = chosen.getOrDefault(candidate.measure(), Set.of())
                .contains(candidate.oids().get(0));
        OID gap = candidate.oids().stream()
                .filter(oid -> seen.walk().get(oid) == null)
                .findFirst()
                .orElse(null);
        if (gap != null) {
            lines.add(line(candidate, Fate.MISSING, "", absent(gap)));
        } else if (!mine) {
            lines.add(line(candidate, Fate.PASSED_OVER, "", "another line is more specific or comes first"));
        } else {
            double value = value(candidate, metric);
            lines.add(
                    Double.isNaN(value)
                            ? line(candidate, Fate.MISSING, "", whyNot(candidate, metric))
                            : line(candidate, Fate.GIVEN, Explaining.figure(value), how(candidate.measure())));
        }
    }

    private double value(Candidate candidate, Metric metric) {
        return switch (metric.subject()) {
            case DEVICE -> seen.visit().device().raw(metric);
            case RADIO ->
                seen.visit().radios().stream()
                        .filter(radio -> candidate.who().equals("radio " + radio.number()))
                        .map(RadioReading::values)
                        .mapToDouble(values -> values.raw(metric))
                        .findFirst()
                        .orElse(Double.NaN);
            case NETWORK -> figure(candidate).value(millis());
        };
    }

    private long millis() {
        return seen.visit().at().toEpochMilli();
    }

    private Figure figure(Candidate candidate) {
        return Stream.of(
                        record.plan.device().stream(),
                        record.plan.radios().values().stream().flatMap(r -> r.figures().stream()),
                        record.plan.networks().stream().flatMap(n -> n.figures().stream()))
                .flatMap(figures -> figures)
                .filter(f -> f.measure() == candidate.measure()
                        && f.parts().get(0).oid.equals(candidate.oids().get(0)))
                .findFirst()
                .orElseThrow();
    }

    private String whyNot(Candidate candidate, Metric metric) {
        Figure figure = figure(candidate);
        double value = figure.value(millis());
        if (figure.isCounter() && Double.isNaN(value)) {
            return seen.later()
                    ? "the counter did not run on between the two walks: a restart, a discontinuity, or less than a second"
                    : "a counter needs two visits: add a later walk of the same device";
        }
        if (Double.isNaN(value)) {
            return "the value is no number that this line knows what to do with";
        }
        if (metric.admits(value)) {
            return metric == Metric.PORT_SPEED
                    ? "the port says 0: it has no notion of speed (RFC 2863)"
                    : "it came out above the port's speed and was dropped";
        }
        return "out of range: " + figure(value) + " is not possible";
    }

    private static String how(Measure measure) {
        String scaled = measure.scaling().equals(Measure.Scaling.NONE) ? "" : ", scaled";
        String share = measure.isShare() ? "share, " : "";
        return share + measure.form().word() + scaled;
    }

    private String absent(OID oid) {
        boolean object = oid.size() > 2 && seen.walk().holds(oid.trim());
        return (object ? "no such instance: " : "no such object: ") + oid.toDottedString() + " is not in the walk";
    }

    private Explained line(Candidate candidate, Fate fate, String value, String why) {
        Target target = candidate.measure().target();
        Unit unit = target instanceof Target.OfMetric of ? of.metric().unit() : Unit.COUNT;
        return new Explained(
                target.key(),
                candidate.who(),
                candidate.profile().name(),
                candidate.measure().line(),
                fate,
                value,
                unit.symbol(),
                why,
                candidate.oids().stream().flatMap(oid -> raw(oid).stream()).toList());
    }

    private java.util.Optional<RawAnswer> raw(OID oid) {
        Variable value = seen.walk().get(oid);
        return value == null
                ? java.util.Optional.empty()
                : java.util.Optional.of(seen.names().of(new VariableBinding(oid, value)));
    }

    private void addWhatTheProgramWorksOut() {
        for (Metric metric : BY_ITSELF) {
            double value = seen.visit().device().raw(metric);
            boolean given = lines.stream()
                    .anyMatch(l -> l.fate() == Fate.GIVEN && l.key().equals(metric.key()));
            if (!Double.isNaN(value) && !given) {
                boolean uptime = metric == Metric.UPTIME;
                List<RawAnswer> raw =
                        uptime ? raw(Standard.SYS_UP_TIME).map(List::of).orElse(List.of()) : List.of();
                String why = uptime ? "read without a profile" : "the sum over the radios";
                String unit = metric.unit().symbol();
                lines.add(new Explained(metric.key(), "device", "", 0, Fate.GIVEN, figure(value), unit, why, raw));
            }
        }
    }

    /** What one line lacks is not missing when another line gives it, to this subject or, without rows, to any. */
    private List<Explained> withoutMissingThatOthersGive() {
        Set<String> given = new HashSet<>();
        lines.stream().filter(l -> l.fate() == Fate.GIVEN).forEach(l -> {
            given.add(l.key() + " of " + l.who());
            given.add(l.key() + " of " + l.who().replaceAll(" .*", "s"));
        });
        return lines.stream()
                .map(l -> l.fate() == Fate.MISSING && given.contains(l.key() + " of " + l.who())
                        ? new Explained(
                                l.key(),
                                l.who(),
                                l.profile(),
                                l.line(),
                                Fate.PASSED_OVER,
                                "",
                                l.unit(),
                                l.why(),
                                l.raw())
                        : l)
                .toList();
    }

    /** As short as it may be without losing anything a person would miss: six significant digits. */
    static String figure(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e15
                ? Long.toString((long) value)
                : new java.math.BigDecimal(value)
                        .round(new java.math.MathContext(6))
                        .stripTrailingZeros()
                        .toPlainString();
    }
}
