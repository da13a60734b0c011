package org.roundsman.snmp;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.roundsman.snmp.profile.Profile;
import org.roundsman.snmp.profile.ProfileReader;
import org.snmp4j.smi.OID;

/** The profiles in use. Immutable. */
public final class ProfileSet {

    private static final List<String> SHIPPED = List.of("demo", "host", "wlan-ieee");

    private final List<Profile> profiles;

    private ProfileSet(List<Profile> profiles) {
        this.profiles = List.copyOf(profiles);
    }

    /**
     * The shipped profiles, and those in the folders ({@code *.yaml}), which win by name; later folders win over
     * earlier ones.
     *
     * @throws ProfileException with one line for each fault in any file, naming file, line and key
     */
    public static ProfileSet load(List<Path> folders) {
        Map<String, Profile> byName = new TreeMap<>();
        List<String> faults = new ArrayList<>();
        for (String name : SHIPPED) {
            take("profiles/" + name + ".yaml", () -> shipped(name), byName, faults);
        }
        for (Path file :
                folders.stream().flatMap(f -> files(f, faults).stream()).toList()) {
            take(file.toString(), () -> Files.newBufferedReader(file), byName, faults);
        }
        if (!faults.isEmpty()) {
            throw new ProfileException(String.join("\n", faults));
        }
        return new ProfileSet(List.copyOf(byName.values()));
    }

    /** Opens a file. */
    private interface Opening {
        Reader open() throws IOException;
    }

    private static void take(String file, Opening opening, Map<String, Profile> byName, List<String> faults) {
        try (Reader text = opening.open()) {
            Profile profile = ProfileReader.read(file, text);
            byName.put(profile.name(), profile);
        } catch (ProfileException e) {
            faults.add(e.getMessage());
        } catch (IOException e) {
            faults.add(file + ": cannot be read as UTF-8 text: " + e);
        }
    }

    private static Reader shipped(String name) throws IOException {
        InputStream stream = ProfileSet.class.getResourceAsStream("/profiles/" + name + ".yaml");
        if (stream == null) {
            throw new IOException("missing in the program");
        }
        return new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8));
    }

    private static List<Path> files(Path folder, List<String> faults) {
        List<Path> files = new ArrayList<>();
        try (DirectoryStream<Path> found = Files.newDirectoryStream(folder, "*.yaml")) {
            found.forEach(files::add);
        } catch (IOException e) {
            faults.add(folder + ": the folder of profiles cannot be read: " + e);
        }
        files.sort(null);
        return files;
    }

    /** Names of all profiles, in alphabetical order. */
    public List<String> names() {
        return profiles.stream().map(Profile::name).toList();
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
                .flatMap(name -> profiles.stream().filter(p -> p.name().equals(name)))
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
