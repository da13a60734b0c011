package org.roundsman.notices.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Addresses of pages, for people who read a notice elsewhere.
 *
 * @param base such as {@code https://roundsman.example}; empty where nobody said
 */
public record Links(Optional<String> base) {

    public Links {
        base = base.map(address -> address.replaceFirst("/+$", "")).filter(address -> !address.isBlank());
    }

    /** Of one alarm. */
    List<Content.Link> ofAlarm(long id, boolean place) {
        List<Content.Link> links = new ArrayList<>();
        base.ifPresent(address -> {
            links.add(new Content.Link("The alarm", address + "/triage/alarms/" + id));
            if (place) {
                links.add(new Content.Link("The visit sheet", address + "/triage/visit/" + id));
            }
        });
        return links;
    }

    List<Content.Link> page(String words, String path) {
        return base.map(address -> List.of(new Content.Link(words, address + path)))
                .orElse(List.of());
    }

    /** The last words of every message. */
    String change() {
        return base.map(address -> "You get this because you chose so. To change it: " + address + "/notices")
                .orElse("You get this because you chose so. To change it: the page “Notices” in Roundsman.");
    }
}
