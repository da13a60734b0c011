package org.roundsman.discovery.recognise;

import java.util.List;

/**
 * One device as a sweep met it.
 *
 * @param answers its addresses, the one that counts first; never empty
 * @param identity what they say together
 * @param why how we know that several addresses are one device; empty for one address
 */
public record Group(List<Answer> answers, Identity identity, String why) {

    public Group {
        answers = List.copyOf(answers);
    }

    public Answer first() {
        return answers.get(0);
    }

    boolean isAt(String host, int port) {
        return answers.stream().anyMatch(a -> a.host().equals(host) && a.port() == port);
    }
}
