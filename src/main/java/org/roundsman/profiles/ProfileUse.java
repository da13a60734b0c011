package org.roundsman.profiles;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.roundsman.fleet.InputRejected;
import org.roundsman.profiles.Consequences.AffectedDevice;
import org.roundsman.profiles.ProfileCases.CaseOutcome;
import org.roundsman.snmp.ProfileFault;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.ProfileSet.Fit;
import org.roundsman.snmp.ProfileText;

/** Puts versions of profiles in use, and tells before what that would bring about. */
@ApplicationScoped
@Transactional
public class ProfileUse {

    private static final String DEVICES = "select d.id, d.name, s.name as site, c.name as customer,"
            + " coalesce(f.value, '') as object_id from device d join site s on s.id = d.site_id"
            + " join customer c on c.id = s.customer_id"
            + " left join device_fact f on f.device_id = d.id and f.fact = 'OBJECT_ID'"
            + " order by lower(c.name), lower(s.name), lower(d.name)";

    private final Sql sql;
    private final WrittenProfiles written;
    private final ProfilesInUse inUse;
    private final ProfileCases cases;

    @Inject
    ProfileUse(Sql sql, WrittenProfiles written, ProfilesInUse inUse, ProfileCases cases) {
        this.sql = sql;
        this.written = written;
        this.inUse = inUse;
        this.cases = cases;
    }

    /**
     * What putting a version in use would bring about.
     *
     * @throws InputRejected under {@code id} when there is no such version
     */
    public Consequences consequences(long id, int number) {
        ProfileVersion version = version(id, number);
        List<ProfileFault> faults = faults(version);
        String replaces = inUse.withoutWritten()
                .text(version.name())
                .map(text -> text.origin().word())
                .orElse("");
        if (!faults.isEmpty()) {
            return new Consequences(version, faults, replaces, List.of(), 0, 0, List.of());
        }
        ProfileSet after = inUse.current().with(version.asText());
        List<AffectedDevice> devices = affected(version, after);
        int perhaps = (int) devices.stream().filter(d -> !d.certain()).count();
        return new Consequences(
                version,
                faults,
                replaces,
                devices.stream().limit(Consequences.MOST_DEVICES).toList(),
                devices.size(),
                perhaps,
                cases.run(after, version.name()));
    }

    private ProfileVersion version(long id, int number) {
        return written.version(id, number)
                .orElseThrow(() -> WrittenProfiles.rejected("id", "this version is not there any more"));
    }

    /** Its own faults, and a name that its first lines and its YAML see differently. */
    private List<ProfileFault> faults(ProfileVersion version) {
        List<ProfileFault> faults = new ArrayList<>(version.faults());
        if (faults.isEmpty()) {
            Optional<ProfileText> mine =
                    inUse.withoutWritten().with(version.asText()).text(version.name());
            if (mine.filter(version.asText()::equals).isEmpty()) {
                faults.add(new ProfileFault(
                        version.name(), 0, "profile", "the name is not " + version.name() + " when the text is read"));
            }
        }
        return faults;
    }

    private List<AffectedDevice> affected(ProfileVersion version, ProfileSet after) {
        ProfileSet before = inUse.current();
        String name = version.name();
        if (before.text(name).filter(text -> text.text().equals(version.text())).isPresent()) {
            return List.of();
        }
        return sql
                .list(DEVICES, row -> {
                    String told = row.getString("object_id");
                    String objectId = told.matches("[0-2](\\.\\d{1,9}){1,60}") ? told : "";
                    Fit was = before.fit(name, objectId);
                    Fit is = after.fit(name, objectId);
                    boolean certain = was == Fit.YES || is == Fit.YES;
                    return was == Fit.NO && is == Fit.NO
                            ? Optional.<AffectedDevice>empty()
                            : Optional.of(new AffectedDevice(
                                    row.getLong("id"),
                                    row.getString("name"),
                                    row.getString("site"),
                                    row.getString("customer"),
                                    objectId,
                                    certain));
                })
                .stream()
                .flatMap(Optional::stream)
                .toList();
    }

    /**
     * Puts a version in use; devices are surveyed anew at their next visit. Going back to a version that was in use
     * before needs no acceptance.
     *
     * @param accepted somebody has seen that test cases end otherwise, and takes the new results as expected
     * @throws InputRejected under {@code version} for a profile with faults, under {@code accept} when test cases differ
     */
    public void use(long id, int number, boolean accepted) {
        Consequences consequences = consequences(id, number);
        if (!consequences.faults().isEmpty()) {
            throw WrittenProfiles.rejected(
                    "version", "it has faults: " + consequences.faults().get(0));
        }
        boolean back = consequences.version().firstUsed().isPresent();
        if (consequences.differs() && !accepted && !back) {
            throw WrittenProfiles.rejected(
                    "accept", "test cases end otherwise than expected: look at them, and say that this is right");
        }
        written.put(consequences.version());
        if (accepted) {
            ProfileSet after = inUse.current().with(consequences.version().asText());
            List<CaseOutcome> differing =
                    consequences.cases().stream().filter(c -> !c.same()).toList();
            cases.accept(differing, after);
        }
    }
}
