package org.roundsman.web.warranty;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.warranty.CoverSearch;
import org.roundsman.warranty.CoverStatus;

/** What the address of a list of units asks for, as text. */
record UnitSearch(
        @RestQuery String customer,
        @RestQuery String site,
        @RestQuery String model,
        @RestQuery String month,
        @RestQuery String status,
        @RestQuery String support,
        @RestQuery String text,
        @RestQuery String page) {

    UnitSearch {
        customer = Asked.text(customer);
        site = Asked.text(site);
        model = Asked.text(model);
        month = Asked.text(month);
        status = Asked.text(status);
        support = Asked.text(support);
        text = Asked.text(text);
        page = Asked.text(page);
    }

    /** The values of a choice of states that ends within 180 days: all of them. */
    static final String ENDING = "ENDING";

    CoverSearch search() {
        return new CoverSearch(
                Asked.number(customer),
                Asked.number(site),
                Asked.number(model),
                Asked.month(month),
                statuses(),
                support.equals("past"),
                text);
    }

    private Set<CoverStatus> statuses() {
        if (status.equals(ENDING)) {
            return EnumSet.of(
                    CoverStatus.ENDS_WITHIN_30,
                    CoverStatus.ENDS_WITHIN_60,
                    CoverStatus.ENDS_WITHIN_90,
                    CoverStatus.ENDS_WITHIN_180);
        }
        return Arrays.stream(CoverStatus.values())
                .filter(one -> one.name().equals(status))
                .findFirst()
                .map(Set::of)
                .orElse(Set.of());
    }

    int number() {
        return Asked.page(page);
    }

    /** The question mark and what follows it in the address of that page of the same list. */
    String address(int number) {
        Map<String, String> parts = new LinkedHashMap<>();
        parts.put("customer", customer);
        parts.put("site", site);
        parts.put("model", model);
        parts.put("month", month);
        parts.put("status", status);
        parts.put("support", support);
        parts.put("text", text);
        parts.put("page", number > 1 ? String.valueOf(number) : "");
        return Asked.address(parts);
    }

    public boolean narrowed() {
        return !address(1).isEmpty();
    }
}
