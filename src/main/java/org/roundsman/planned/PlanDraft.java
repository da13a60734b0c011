package org.roundsman.planned;

/**
 * Planned work as entered.
 *
 * @param reason why, or what will be done; may be empty
 */
public record PlanDraft(Where where, String title, String reason, Timing timing) {

    /**
     * What is to be worked on.
     *
     * @param id of the customer, site or device
     */
    public record Where(Reach reach, long id) {}
}
