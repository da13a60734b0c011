package org.roundsman.discovery.recognise;

import java.util.Collection;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;

/** Proposes names and places for devices from what they say. Gives each name once. */
public final class Names {

    private static final int LONGEST_NAME = 120;
    private static final int LONGEST_PLACE = 200;

    private final Set<String> taken = new HashSet<>();

    /** @param taken names of the site, with or without regard to case */
    public Names(Collection<String> taken) {
        taken.forEach(name -> this.taken.add(key(name)));
    }

    /** The first part of a host name, or any other name as it is; where there is none, what it is and its address. */
    public String propose(String sysName, String model, String host) {
        String said = plain(sysName);
        boolean hostName = said.matches("[A-Za-z0-9_-]+(\\.[A-Za-z0-9_-]+)+\\.?") && !said.matches("[0-9.]+");
        String name = hostName ? said.substring(0, said.indexOf('.')) : said;
        if (name.isEmpty()) {
            name = (model.isBlank() ? "Device" : plain(model)) + " at " + host;
        }
        return once(cut(name, LONGEST_NAME));
    }

    private String once(String name) {
        String free = name;
        for (int number = 2; !taken.add(key(free)); number++) {
            String end = " " + number;
            free = cut(name, LONGEST_NAME - end.length()) + end;
        }
        return free;
    }

    /** What it says about its place, as far as it can be stored. */
    public static String place(String sysLocation) {
        return cut(plain(sysLocation), LONGEST_PLACE);
    }

    private static String plain(String text) {
        return text.replaceAll("\\p{Cntrl}", " ").strip();
    }

    private static String cut(String text, int longest) {
        return text.length() <= longest ? text : text.substring(0, longest).strip();
    }

    private static String key(String name) {
        return name.strip().toLowerCase(Locale.ROOT);
    }
}
