package org.roundsman.snmp;

import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.roundsman.snmp.ProfileText.Origin;
import org.roundsman.snmp.profile.Form;
import org.roundsman.snmp.profile.Profile;
import org.roundsman.snmp.profile.ProfileReader;
import org.roundsman.snmp.profile.Target;
import org.snmp4j.smi.OID;

/** The profiles in use. Immutable. */
public final class ProfileSet {

    /** A longer text is refused before it is read. */
    public static final int LONGEST_TEXT = 64 * 1024;

    private static final List<String> SHIPPED = List.of("demo", "host", "wlan-ieee");

    private final List<Profile> profiles;
    private final Map<String, ProfileText> texts;

    private ProfileSet(TreeMap<String, Profile> byName, Map<String, ProfileText> texts) {
        this.profiles = List.copyOf(byName.values());
        this.texts = Map.copyOf(texts);
    }

    /** Whether a profile applies to a device, as far as its sysObjectID tells. */
    public enum Fit {
        YES,
        /** It depends on what the device answers. */
        PERHAPS,
        NO
    }

    /**
     * The shipped profiles, and those in the folders ({@code *.yaml}), which win by name; later folders win over
     * earlier ones.
     *
     * @throws ProfileException with one line for each fault in any file, naming file, line and key
     */
    public static ProfileSet load(List<Path> folders) {
        return load(folders, List.of());
    }

    /**
     * As {@link #load(List)}, and more texts, which win over all of those by name; later ones over earlier ones.
     *
     * @throws ProfileException with one line for each fault in any file or text, naming it, line and key
     */
    public static ProfileSet load(List<Path> folders, List<ProfileText> more) {
        TreeMap<String, Profile> byName = new TreeMap<>();
        Map<String, ProfileText> texts = new LinkedHashMap<>();
        List<ProfileFault> faults = new ArrayList<>();
        List<ProfileText> all = new ArrayList<>(shipped());
        folders.stream().flatMap(folder -> files(folder, faults).stream()).forEach(file -> {
            try {
                all.add(new ProfileText(file.toString(), Files.readString(file), Origin.FOLDER));
            } catch (IOException e) {
                faults.add(new ProfileFault(file.toString(), 0, "", "cannot be read as UTF-8 text: " + e));
            }
        });
        all.addAll(more);
        for (ProfileText text : all) {
            try {
                Profile profile = read(text);
                byName.put(profile.name(), profile);
                texts.put(profile.name(), text);
            } catch (ProfileException e) {
                faults.addAll(e.faults());
            }
        }
        if (!faults.isEmpty()) {
            throw new ProfileException(faults);
        }
        return new ProfileSet(byName, texts);
    }

    private static Profile read(ProfileText text) {
        if (text.text().length() > LONGEST_TEXT) {
            String longest = "longer than " + LONGEST_TEXT / 1024 + " KiB; nothing that long is read as a profile";
            throw new ProfileException(List.of(new ProfileFault(text.file(), 0, "", longest)));
        }
        return ProfileReader.read(text.file(), new StringReader(text.text()));
    }

    /** Everything that is wrong with a text, by line; empty when it can be used. */
    public static List<ProfileFault> check(ProfileText text) {
        try {
            read(text);
            return List.of();
        } catch (ProfileException e) {
            return e.faults();
        }
    }

    /** The texts that are part of the program. */
    public static List<ProfileText> shipped() {
        List<ProfileText> texts = new ArrayList<>();
        for (String name : SHIPPED) {
            String file = "profiles/" + name + ".yaml";
            try (InputStream stream = ProfileSet.class.getResourceAsStream("/" + file)) {
                texts.add(new ProfileText(
                        file, new String(stream.readAllBytes(), StandardCharsets.UTF_8), Origin.SHIPPED));
            } catch (IOException | NullPointerException e) {
                throw new IllegalStateException(file + " is missing in the program", e);
            }
        }
        return texts;
    }

    /** Everything that a profile can give, such as {@code radio.clients}. */
    public static List<String> measurable() {
        return Target.all().stream().map(Target::key).toList();
    }

    /** How a raw value can be read: what the key {@code as} takes. */
    public static List<String> forms() {
        return Arrays.stream(Form.values()).map(Form::word).toList();
    }

    private static List<Path> files(Path folder, List<ProfileFault> faults) {
        List<Path> files = new ArrayList<>();
        try (DirectoryStream<Path> found = Files.newDirectoryStream(folder, "*.yaml")) {
            found.forEach(files::add);
        } catch (IOException e) {
            faults.add(new ProfileFault(folder.toString(), 0, "", "the folder of profiles cannot be read: " + e));
        }
        files.sort(null);
        return files;
    }

    /**
     * This set with one more text, which wins by name.
     *
     * @throws ProfileException when the text has a fault
     */
    public ProfileSet with(ProfileText text) {
        TreeMap<String, Profile> byName = new TreeMap<>();
        profiles.forEach(profile -> byName.put(profile.name(), profile));
        Map<String, ProfileText> more = new LinkedHashMap<>(texts);
        Profile profile = read(text);
        byName.put(profile.name(), profile);
        more.put(profile.name(), text);
        return new ProfileSet(byName, more);
    }

    /** Names of all profiles, in alphabetical order. */
    public List<String> names() {
        return profiles.stream().map(Profile::name).toList();
    }

    /** How a profile of this set was written. */
    public Optional<ProfileText> text(String name) {
        return Optional.ofNullable(texts.get(name));
    }

    /** What a profile of this set says about itself in one line; empty where it says nothing. */
    public String about(String name) {
        return named(name).map(Profile::about).orElse("");
    }

    /**
     * Whether a profile of this set applies to a device.
     *
     * @param objectId the device's sysObjectID, or empty
     */
    public Fit fit(String name, String objectId) {
        OID told = objectId.isEmpty() ? null : new OID(objectId);
        return named(name).map(profile -> fit(profile, told)).orElse(Fit.NO);
    }

    private static Fit fit(Profile profile, OID told) {
        List<Profile.Selector> near = profile.selectors().stream()
                .filter(s -> s.objectId() == null || told != null && told.startsWith(s.objectId()))
                .toList();
        if (profile.selectors().isEmpty() || near.stream().anyMatch(s -> s.answers() == null)) {
            return Fit.YES;
        }
        return near.isEmpty() ? Fit.NO : Fit.PERHAPS;
    }

    private Optional<Profile> named(String name) {
        return profiles.stream().filter(p -> p.name().equals(name)).findFirst();
    }

    /**
     * What a device is, as the profiles that apply to it say: access point, switch or gateway.
     *
     * @param applied names of the profiles, the most specific first, as a visit gives them
     * @param objectId its sysObjectID, or empty
     */
    public Optional<String> kindOf(List<String> applied, String objectId) {
        OID told = objectId.isEmpty() ? null : new OID(objectId);
        return applied.stream()
                .flatMap(name -> named(name).stream())
                .flatMap(profile -> profile.kind(told).stream())
                .findFirst();
    }

    /** What the profiles call a notification; the first profile in alphabetical order that names it counts. */
    public Optional<NamedNotification> notification(String oid) {
        return profiles.stream()
                .flatMap(profile -> profile.notifications().stream())
                .filter(named -> named.oid().equals(oid))
                .findFirst();
    }

    List<Profile> all() {
        return profiles;
    }
}
