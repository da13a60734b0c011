package org.roundsman.web.firmware;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.roundsman.firmware.Comparison;
import org.roundsman.firmware.Comparison.Outcome;
import org.roundsman.firmware.LinePolicy;
import org.roundsman.firmware.PolicyException;
import org.roundsman.firmware.Release;
import org.roundsman.firmware.Version;
import org.roundsman.firmware.VersionScheme;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.Sites;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** Puts together what the pages of the policy show. */
@ApplicationScoped
class PolicyViews {

    private final Customers customers;
    private final Sites sites;
    private final Visitor visitor;
    private final Clock clock;

    PolicyViews(Customers customers, Sites sites, Visitor visitor, Clock clock) {
        this.customers = customers;
        this.sites = sites;
        this.visitor = visitor;
        this.clock = clock;
    }

    /** A line in the list of lines. */
    record LineOf(
            long id,
            String name,
            String scheme,
            String models,
            String recommended,
            String withdrawn,
            String exceptions) {}

    /** Something to choose. */
    record Choice(String value, String name) {}

    /**
     * A release in its place in the order.
     *
     * @param parts as the rule reads it, or why it cannot
     */
    record ReleaseLine(
            long id, String version, String stand, String of, String reason, String released, String parts) {}

    /** A customer who may run something else. */
    record ExceptionLine(
            long id, String customer, String version, String reason, String lastDay, String by, boolean over) {}

    /** One version tried by hand. */
    record Tried(String version, List<Version.Part> parts, List<String> place, String fault) {
        public boolean asked() {
            return !version.isEmpty();
        }
    }

    /**
     * The page of a line.
     *
     * @param wrongForm which form was refused, or empty
     */
    record Whole(
            LinePolicy policy,
            String scheme,
            String rule,
            List<ReleaseLine> releases,
            List<ExceptionLine> exceptions,
            Tried tried,
            ReleaseForm form,
            Faults faults,
            String wrongForm,
            List<Choice> stands,
            List<Choice> customers,
            List<Choice> sites) {

        /** The faults of that form; none of the others. */
        public Faults in(String which) {
            return wrongForm.equals(which) ? faults : Faults.NONE;
        }

        public String model(String which) {
            return wrongForm.equals(which) || wrongForm.isEmpty() && which.equals("release") ? form.model() : "";
        }

        /** What stands in a field of that form. */
        public ReleaseForm of(String which) {
            boolean shown = wrongForm.equals(which) || wrongForm.isEmpty() && which.equals("release");
            return shown ? form : new ReleaseForm("", "", "", "", "", "", "", "", "", "");
        }
    }

    List<LineOf> lines(List<LinePolicy> policies) {
        return policies.stream()
                .map(line -> new LineOf(
                        line.lineId(),
                        line.line(),
                        line.scheme().word(),
                        line.models().stream().map(LinePolicy.ModelOf::name).collect(Collectors.joining(", ")),
                        versions(line, Release.Stand.RECOMMENDED),
                        versions(line, Release.Stand.WITHDRAWN),
                        live(line) == 0 ? "" : String.valueOf(live(line))))
                .toList();
    }

    private static String versions(LinePolicy line, Release.Stand stand) {
        return line.releases().stream()
                .filter(release -> release.stand() == stand)
                .map(release -> release.version() + (release.model().isEmpty() ? "" : " (" + release.model() + ")"))
                .collect(Collectors.joining(", "));
    }

    private long live(LinePolicy line) {
        return line.exceptions().stream().filter(one -> !over(one)).count();
    }

    /** Over everywhere on Earth. */
    private boolean over(PolicyException one) {
        LocalDate today = clock.instant().atOffset(ZoneOffset.ofHours(-12)).toLocalDate();
        return one.lastDay().isBefore(today);
    }

    Whole whole(LinePolicy policy, String version, ReleaseForm form, Faults faults, String wrongForm) {
        VersionScheme versions = policy.versions();
        return new Whole(
                policy,
                policy.scheme().word(),
                versions.words(),
                releases(policy, versions),
                policy.exceptions().stream().map(this::line).toList(),
                tried(policy, versions, version.strip()),
                form,
                faults,
                wrongForm,
                Arrays.stream(Release.Stand.values())
                        .map(stand -> new Choice(stand.name(), stand.word()))
                        .toList(),
                customers.all(visitor.scope()).stream()
                        .map(one -> new Choice(String.valueOf(one.id), one.name))
                        .toList(),
                siteChoices());
    }

    private List<Choice> siteChoices() {
        List<Choice> choices = new ArrayList<>();
        customers.all(visitor.scope()).forEach(customer -> sites.all(visitor.scope(), customer.id)
                .forEach(site -> choices.add(new Choice(String.valueOf(site.id), customer.name + ": " + site.name))));
        return choices;
    }

    private ExceptionLine line(PolicyException one) {
        return new ExceptionLine(
                one.id(),
                one.customer(),
                FirmwareWords.or(one.version(), "whatever runs there"),
                one.reason(),
                one.lastDay().toString(),
                one.madeBy(),
                over(one));
    }

    /** The newest first; those that cannot be compared at the end. */
    private static List<ReleaseLine> releases(LinePolicy policy, VersionScheme versions) {
        Comparator<Release> order = (one, other) -> {
            Comparison comparison = VersionScheme.compare(versions.read(other.version()), versions.read(one.version()));
            return switch (comparison.outcome()) {
                case OLDER -> -1;
                case NEWER -> 1;
                case SAME, CANNOT_BE_COMPARED -> 0;
            };
        };
        List<Release> read = new ArrayList<>();
        List<Release> unread = new ArrayList<>();
        policy.releases().forEach(release -> (versions.read(release.version()) instanceof Version.Read ? read : unread)
                .add(release));
        read.sort(order);
        read.addAll(unread);
        return read.stream().map(release -> line(release, versions)).toList();
    }

    private static ReleaseLine line(Release release, VersionScheme versions) {
        String on = release.withdrawnOn().map(day -> "on " + day + ": ").orElse("");
        return new ReleaseLine(
                release.id(),
                release.version(),
                release.stand().word(),
                FirmwareWords.or(release.model(), "all models"),
                on + release.reason(),
                release.releasedOn().map(LocalDate::toString).orElse(""),
                parts(versions.read(release.version())));
    }

    private static String parts(Version version) {
        if (version instanceof Version.Unreadable unreadable) {
            return "cannot be compared: " + unreadable.reason();
        }
        return ((Version.Read) version)
                .parts().stream()
                        .map(part -> part.name() + " " + FirmwareWords.or(part.text(), "(nothing)"))
                        .collect(Collectors.joining(" · "));
    }

    private static Tried tried(LinePolicy policy, VersionScheme versions, String text) {
        if (text.isEmpty()) {
            return new Tried("", List.of(), List.of(), "");
        }
        Version version = versions.read(text);
        if (version instanceof Version.Unreadable unreadable) {
            return new Tried(
                    version.text(), List.of(), List.of(), "It cannot be compared: " + unreadable.reason() + ".");
        }
        List<String> place = policy.releases().stream()
                .map(release -> place(version, release, versions))
                .toList();
        return new Tried(version.text(), ((Version.Read) version).parts(), place, "");
    }

    private static String place(Version version, Release release, VersionScheme versions) {
        Comparison comparison = VersionScheme.compare(version, versions.read(release.version()));
        Optional<String> word = comparison.outcome() == Outcome.CANNOT_BE_COMPARED
                ? Optional.of("cannot be compared with")
                : Optional.of(
                        comparison.outcome() == Outcome.SAME
                                ? "the same release as"
                                : comparison.outcome().name().toLowerCase(java.util.Locale.ROOT) + " than");
        return word.get() + " " + release.version() + " (" + release.stand().word() + ")";
    }
}
