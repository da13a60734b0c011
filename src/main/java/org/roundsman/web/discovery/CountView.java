package org.roundsman.web.discovery;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.discovery.AddressRanges;
import org.roundsman.web.page.Words;

/**
 * How many addresses are entered, while they are entered.
 *
 * @param text the count, or empty
 * @param fault what is wrong, or empty
 */
record CountView(String text, String fault) {

    static CountView of(String ranges, String ports) {
        if (ranges == null || ranges.isBlank()) {
            return new CountView("Nothing is entered yet.", "");
        }
        Map<String, String> faults = new LinkedHashMap<>();
        List<Integer> numbers = PlanForm.numbers(ports, faults);
        try {
            AddressRanges read = AddressRanges.read(ranges);
            int all = read.questions(Math.max(1, numbers.size()));
            String many = Words.many(read.count().longValueExact(), "address", "addresses");
            String each = numbers.size() > 1 ? ", " + Words.count(all) + " with each port" : "";
            return new CountView(
                    many + each + ", of at most " + Words.count(AddressRanges.MOST) + " in one sweep.", "");
        } catch (IllegalArgumentException e) {
            return new CountView("", e.getMessage());
        }
    }
}
