package org.roundsman.people;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What a personal token may do, within what its person may do. The name is what the table stores. */
public enum TokenScope {
    /** Part of every token. */
    READ("look at what you may see"),
    CHANGE("add, change and remove customers, sites, devices, models, credentials, values of rules, claims and spares;"
            + " decide about firmware; import; plan work; build, review and send reports"),
    VISIT("send requests to devices: poll now, look for devices"),
    PROFILES("write profiles and roll them back"),
    ALARMS("acknowledge, take, shelve and close alarms"),
    AUDIT("read who changed what");

    private final String words;

    TokenScope(String words) {
        this.words = words;
    }

    /** The word in the API and on pages. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** What it allows, in words. */
    public String words() {
        return words;
    }

    /** Those that somebody in this role can make use of. */
    public static List<TokenScope> usefulTo(Role role) {
        return role == Role.VIEWER ? List.of(READ) : List.of(values());
    }

    /** The scope of that word. */
    public static Optional<TokenScope> of(String word) {
        return Arrays.stream(values())
                .filter(scope -> scope.word().equals(word))
                .findFirst();
    }

    static String stored(Set<TokenScope> scopes) {
        return EnumSet.copyOf(scopes).stream().map(Enum::name).collect(Collectors.joining(","));
    }

    static Set<TokenScope> read(String stored) {
        return Arrays.stream(stored.split(","))
                .map(TokenScope::valueOf)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(TokenScope.class)));
    }
}
