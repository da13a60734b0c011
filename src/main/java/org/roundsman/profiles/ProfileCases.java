package org.roundsman.profiles;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.audit.AuditTrail;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.WalkReading;
import org.roundsman.system.StorableText;

/** Walks with what profiles are expected to make of them, so that a change to a profile shows what else it changes. */
@ApplicationScoped
@Transactional
public class ProfileCases {

    private final Sql sql;
    private final StoredWalks walks;
    private final Workbench bench;
    private final AuditTrail audit;
    private final Clock clock;
    private final ObjectMapper json = new ObjectMapper();

    @Inject
    ProfileCases(Sql sql, StoredWalks walks, Workbench bench, AuditTrail audit, Clock clock) {
        this.sql = sql;
        this.walks = walks;
        this.bench = bench;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * One result.
     *
     * @param who {@code device}, {@code radio 1}, {@code network Guest (1.2)}
     * @param key such as {@code radio.clients}
     * @param value a figure in the metric's unit, or a text
     */
    public record Result(String who, String key, String value) {}

    /**
     * A result that is not what was expected.
     *
     * @param expected empty where nothing was
     * @param found empty where nothing is
     */
    public record Difference(String who, String key, String expected, String found) {}

    /**
     * How a test case ended.
     *
     * @param applies whether the profile in question applies to the walk
     */
    public record CaseOutcome(StoredWalk walk, boolean applies, List<Difference> differences) {
        /** Everything is as expected. */
        public boolean same() {
            return differences.isEmpty();
        }
    }

    /** Makes a walk a test case: what the profiles in use make of it now is what is expected from now on. */
    public void keep(StoredWalk stored) {
        boolean known = stored.testCase();
        write(stored, results(bench.read(stored)));
        audit.did(known ? "took new results as expected" : "made a test case", StoredWalks.subject(stored));
    }

    /** The walk stays; it is no test case any more. */
    public void drop(StoredWalk stored) {
        if (sql.change("delete from profile_case where walk_id = ?", stored.id()) > 0) {
            audit.did("is no test case any more", StoredWalks.subject(stored));
        }
    }

    /** What is expected of a walk; empty when it is no test case. */
    public List<Result> expected(StoredWalk stored) {
        return sql.one("select expected from profile_case where walk_id = ?", row -> row.getString(1), stored.id())
                .map(this::parse)
                .orElse(List.of());
    }

    /**
     * Runs every test case with a set of profiles.
     *
     * @param profile the one in question: cases to which it does not apply are given only where something differs
     */
    public List<CaseOutcome> run(ProfileSet set, String profile) {
        List<CaseOutcome> outcomes = new ArrayList<>();
        for (StoredWalk stored : walks.all(CustomerScope.everyone())) {
            if (stored.testCase()) {
                WalkReading reading = bench.read(stored, set);
                boolean applies = reading.visit().profiles().contains(profile);
                List<Difference> differences = differences(expected(stored), results(reading));
                if (applies || !differences.isEmpty()) {
                    outcomes.add(new CaseOutcome(stored, applies, differences));
                }
            }
        }
        return outcomes;
    }

    /** Takes over what a set of profiles makes of those cases, which somebody has accepted. */
    void accept(List<CaseOutcome> outcomes, ProfileSet set) {
        for (CaseOutcome outcome : outcomes) {
            if (!outcome.same()) {
                write(outcome.walk(), results(bench.read(outcome.walk(), set)));
                audit.did("took new results as expected", StoredWalks.subject(outcome.walk()));
            }
        }
    }

    /** How one case ends with the profiles in use. */
    public CaseOutcome now(StoredWalk stored, WalkReading reading) {
        return new CaseOutcome(stored, true, differences(expected(stored), results(reading)));
    }

    private void write(StoredWalk stored, List<Result> results) {
        sql.change(
                "insert into profile_case (walk_id, expected, author, at) values (?, ?::jsonb, ?, ?)"
                        + " on conflict (walk_id) do update set expected = excluded.expected, author = excluded.author,"
                        + " at = excluded.at",
                stored.id(),
                print(results),
                audit.actor().name(),
                clock.instant());
    }

    /** Everything that is given, in the order of the profiles' lines. */
    public static List<Result> results(WalkReading reading) {
        return reading.given().stream()
                .map(line -> new Result(line.who(), line.key(), StorableText.of(line.value())))
                .toList();
    }

    /** What differs between two lists of results. */
    public static List<Difference> differences(List<Result> expected, List<Result> found) {
        Map<String, Difference> all = new LinkedHashMap<>();
        expected.forEach(r -> all.put(r.who() + "\n" + r.key(), new Difference(r.who(), r.key(), r.value(), "")));
        found.forEach(r -> all.merge(
                r.who() + "\n" + r.key(),
                new Difference(r.who(), r.key(), "", r.value()),
                (before, now) -> new Difference(r.who(), r.key(), before.expected(), r.value())));
        return all.values().stream()
                .filter(d -> !d.expected().equals(d.found()))
                .toList();
    }

    private List<Result> parse(String text) {
        try {
            return json.readValue(text, new TypeReference<List<Result>>() {});
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a test case was written by us and is JSON", e);
        }
    }

    private String print(List<Result> results) {
        try {
            return json.writeValueAsString(results);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("results are plain texts", e);
        }
    }
}
