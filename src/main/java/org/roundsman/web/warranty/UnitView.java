package org.roundsman.web.warranty;

import java.util.List;

/**
 * What the page of a unit shows.
 *
 * @param device address of the device's page, or empty
 * @param edit address of the form for the purchase
 * @param attach address that takes evidence; empty without a purchase
 * @param bought what is entered of the purchase; empty without one
 * @param changes address of what was changed of it, or empty
 */
record UnitView(
        UnitLine line,
        String served,
        String today,
        List<Step> steps,
        String device,
        String edit,
        String attach,
        List<Fact> bought,
        List<ContractLine> contracts,
        List<File> files,
        String changes) {

    /** A step of the derivation. */
    record Step(String sign, String text) {}

    /** A field and what it holds. */
    record Fact(String name, String value) {}

    /** A file that proves the purchase. */
    record File(long id, String name, String about) {}

    public boolean purchased() {
        return !attach.isEmpty();
    }
}
