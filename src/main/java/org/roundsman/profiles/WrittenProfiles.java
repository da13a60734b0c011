package org.roundsman.profiles;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;
import org.roundsman.fleet.InputRejected;
import org.roundsman.snmp.ProfileFault;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.ProfileText;
import org.roundsman.snmp.ProfileText.Origin;

/** Keeps the profiles that people write: every save is a version, and one of them may be in use. */
@ApplicationScoped
@Transactional
public class WrittenProfiles {

    private static final String HEAD = "select p.id, p.name, p.version_in_use, v.number, v.author, v.at"
            + " from written_profile p join lateral (select number, author, at from profile_version"
            + " where profile_id = p.id order by number desc limit 1) v on true";
    private static final String VERSION =
            "select v.*, p.name from profile_version v" + " join written_profile p on p.id = v.profile_id";
    private static final Pattern NAME =
            Pattern.compile("(?m)^profile:[ \\t]*[\"']?([a-z0-9][a-z0-9-]*)[\"']?[ \\t]*(#.*)?\\r?$");
    private static final int LONGEST_NOTE = 500;

    private final Sql sql;
    private final AuditTrail audit;
    private final Clock clock;
    private final Event<ProfilesChanged> changed;

    @Inject
    WrittenProfiles(Sql sql, AuditTrail audit, Clock clock, Event<ProfilesChanged> changed) {
        this.sql = sql;
        this.audit = audit;
        this.clock = clock;
        this.changed = changed;
    }

    /** All of them, by name. */
    public List<WrittenProfile> all() {
        return sql.list(HEAD + " order by p.name", WrittenProfiles::head);
    }

    public Optional<WrittenProfile> find(long id) {
        return sql.one(HEAD + " where p.id = ?", WrittenProfiles::head, id);
    }

    public Optional<WrittenProfile> named(String name) {
        return sql.one(HEAD + " where p.name = ?", WrittenProfiles::head, name);
    }

    /** Its versions, the latest first. */
    public List<ProfileVersion> versions(long id) {
        return sql.list(VERSION + " where profile_id = ? order by number desc", WrittenProfiles::version, id);
    }

    public Optional<ProfileVersion> version(long id, int number) {
        return sql.one(VERSION + " where profile_id = ? and number = ?", WrittenProfiles::version, id, number);
    }

    /** Everything that is wrong with a text, by line. */
    public static List<ProfileFault> check(String text) {
        return ProfileSet.check(new ProfileText(nameIn(text).orElse("profile"), text, Origin.WRITTEN));
    }

    /** The name that a text gives itself, if it can be read. */
    public static Optional<String> nameIn(String text) {
        Matcher name = NAME.matcher(text);
        return name.find() ? Optional.of(name.group(1)) : Optional.empty();
    }

    /**
     * Saves a new profile as its version 1. A text with faults is kept as well, but cannot be put in use.
     *
     * @throws InputRejected naming the field: text, note
     */
    public ProfileVersion add(String text, String note) {
        String name = checked(text, note);
        if (named(name).isPresent()) {
            throw rejected(
                    "text", "there is a profile " + name + " already: change that one, or give this another name");
        }
        long id = sql.one(
                        "insert into written_profile (name, created_at) values (?, ?) on conflict do nothing returning"
                                + " id",
                        row -> row.getLong(1),
                        name,
                        clock.instant())
                .orElseThrow(() -> rejected("text", "somebody just saved another profile " + name));
        keep(id, 1, text, note);
        audit.added(subject(id, name), new FieldSet().with("version", 1).with("note", note));
        return version(id, 1).orElseThrow();
    }

    /**
     * Saves the next version.
     *
     * @param basedOn the version that the person began to change
     * @throws InputRejected naming the field: text, note, or {@code basedOn} when somebody saved another version meanwhile
     */
    public ProfileVersion save(long id, int basedOn, String text, String note) {
        String name = sql.one("select name from written_profile where id = ? for update", row -> row.getString(1), id)
                .orElseThrow(() -> rejected("id", "this profile is not there any more"));
        String own = checked(text, note);
        if (!own.equals(name)) {
            throw rejected(
                    "text",
                    "this profile is called " + name + "; to have one called " + own
                            + ", start a new profile from a copy");
        }
        ProfileVersion latest = versions(id).get(0);
        if (latest.number() != basedOn) {
            throw rejected(
                    "basedOn",
                    latest.author() + " saved version " + latest.number()
                            + " while you were changing version " + basedOn
                            + ". Nothing was saved: look at what is different, bring the two together, and save"
                            + " again.");
        }
        if (latest.text().equals(text)) {
            throw rejected("text", "nothing is different from version " + basedOn);
        }
        keep(id, basedOn + 1, text, note);
        audit.changed(
                subject(id, name),
                new FieldSet().with("latest version", basedOn),
                new FieldSet().with("latest version", basedOn + 1).with("note", note));
        return version(id, basedOn + 1).orElseThrow();
    }

    private static String checked(String text, String note) {
        if (text.length() > ProfileSet.LONGEST_TEXT) {
            throw rejected("text", "at most " + ProfileSet.LONGEST_TEXT / 1024 + " KiB");
        }
        if (text.indexOf('\0') >= 0) {
            throw rejected("text", "holds a control character");
        }
        if (note.length() > LONGEST_NOTE || note.indexOf('\0') >= 0) {
            throw rejected("note", "at most " + LONGEST_NOTE + " characters");
        }
        return nameIn(text)
                .orElseThrow(() -> rejected(
                        "text",
                        "a line such as profile: my-maker is wanted, with small letters, digits and hyphens: without a"
                                + " name it cannot be saved"));
    }

    private void keep(long id, int number, String text, String note) {
        sql.change(
                "insert into profile_version (profile_id, number, text, note, author, at) values (?, ?, ?, ?, ?, ?)",
                id,
                number,
                text,
                note,
                audit.actor().name(),
                clock.instant());
    }

    /** Puts a version in use. Callers saw to it that it has no fault and that its consequences are accepted. */
    void put(ProfileVersion version) {
        Optional<Integer> before = find(version.profileId()).flatMap(WrittenProfile::inUse);
        boolean back = before.isPresent() && version.number() < before.get();
        sql.change("update written_profile set version_in_use = ? where id = ?", version.number(), version.profileId());
        sql.change(
                "update profile_version set first_used = coalesce(first_used, ?) where profile_id = ? and number = ?",
                clock.instant(),
                version.profileId(),
                version.number());
        audit.note(List.of(new AuditTrail.Note(
                back ? "rolled back" : "put in use",
                subject(version.profileId(), version.name()),
                FieldSet.between(
                        new FieldSet()
                                .with(
                                        "version in use",
                                        before.map(String::valueOf).orElse("none")),
                        new FieldSet().with("version in use", version.number())))));
        changed.fire(new ProfilesChanged());
    }

    /** Takes a profile out of use: a shipped one of the same name comes back. Does nothing where none is in use. */
    public void takeOut(long id) {
        WrittenProfile profile = find(id).orElseThrow(() -> rejected("id", "this profile is not there any more"));
        if (profile.inUse().isPresent()) {
            sql.change("update written_profile set version_in_use = null where id = ?", id);
            audit.note(List.of(new AuditTrail.Note(
                    "taken out of use",
                    subject(id, profile.name()),
                    FieldSet.between(
                            new FieldSet()
                                    .with("version in use", profile.inUse().get()),
                            new FieldSet().with("version in use", "none")))));
            changed.fire(new ProfilesChanged());
        }
    }

    static InputRejected rejected(String field, String fault) {
        return new InputRejected(Map.of(field, fault));
    }

    private static Subject subject(long id, String name) {
        return new Subject("profile", id, name, null);
    }

    private static WrittenProfile head(ResultSet row) throws SQLException {
        int inUse = row.getInt("version_in_use");
        boolean none = row.wasNull();
        return new WrittenProfile(
                row.getLong("id"),
                row.getString("name"),
                row.getInt("number"),
                none ? Optional.empty() : Optional.of(inUse),
                row.getString("author"),
                Sql.instant(row, "at"));
    }

    private static ProfileVersion version(ResultSet row) throws SQLException {
        return new ProfileVersion(
                row.getLong("profile_id"),
                row.getString("name"),
                row.getInt("number"),
                row.getString("text"),
                row.getString("note"),
                row.getString("author"),
                Sql.instant(row, "at"),
                Optional.ofNullable(Sql.instant(row, "first_used")));
    }
}
