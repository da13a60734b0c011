package org.roundsman.web.device;

import java.util.List;
import org.roundsman.shared.Page;

/**
 * What happened to a device, one page of it.
 *
 * @param stamp changes with each news
 * @param choices which sorts can be shown
 * @param unnamed a sentence about notifications without a name, or empty
 */
record Happened(
        long deviceId,
        String device,
        String kind,
        String stamp,
        List<Choice> choices,
        Page<HappenedLine> page,
        String unnamed) {

    /**
     * One sort of events.
     *
     * @param kind for the address; empty for all
     */
    record Choice(String kind, String word, String count, boolean chosen) {}

    /** The address of a page of the same sort. */
    public String address(int number) {
        return "/devices/" + deviceId + "/happened?kind=" + kind + "&page=" + number;
    }

    /** The address that brings news of what is shown, and nothing where there are none. */
    public String newsAddress() {
        return address(page.number()) + "&seen=" + stamp;
    }

    public int previous() {
        return page.number() - 1;
    }

    public int next() {
        return page.number() + 1;
    }
}
