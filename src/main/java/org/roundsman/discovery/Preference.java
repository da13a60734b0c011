package org.roundsman.discovery;

import java.util.ArrayList;
import java.util.List;
import org.roundsman.discovery.recognise.Answer;
import org.roundsman.discovery.recognise.Group;
import org.roundsman.discovery.recognise.Known;

/** Of several addresses of one device, that under which the site has it already counts; else the first. */
final class Preference {

    private Preference() {}

    static Group of(Group group, List<Known> known, long siteId) {
        List<Answer> answers = new ArrayList<>(group.answers());
        group.answers().stream()
                .filter(answer -> known.stream()
                        .anyMatch(k ->
                                k.siteId() == siteId && k.host().equals(answer.host()) && k.port() == answer.port()))
                .findFirst()
                .ifPresent(answer -> {
                    answers.remove(answer);
                    answers.add(0, answer);
                });
        return new Group(answers, group.identity(), group.why());
    }
}
