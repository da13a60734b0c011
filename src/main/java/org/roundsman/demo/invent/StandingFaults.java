package org.roundsman.demo.invent;

import java.util.EnumSet;
import java.util.Set;
import org.roundsman.demo.Fault;
import org.roundsman.demo.invent.Scenario.CustomerPlan;
import org.roundsman.demo.invent.Scenario.SitePlan;

/** Which access points always have a fault, so that there is something to find in a fleet of any size. */
final class StandingFaults {

    private static final int EVERY = 250;

    private StandingFaults() {}

    static boolean hasCrowdedRoom(CustomerPlan owner, SitePlan plan) {
        return owner.slug().equals("brackwater")
                || owner.slug().equals("quillfeather") && plan.slug().equals("main");
    }

    /**
     * The faults of one access point.
     *
     * @param index its number in its site, from 1
     * @param ordinal its number among the fleet's access points, from 1
     */
    static Set<Fault> of(CustomerPlan owner, SitePlan plan, int index, int ordinal) {
        Set<Fault> faults = EnumSet.noneOf(Fault.class);
        if (index == 4 && hasCrowdedRoom(owner, plan)) {
            faults.add(Fault.ROOM_SATURATED);
        }
        named(owner, plan, index, faults);
        if (ordinal > EVERY) {
            drawn(ordinal, faults);
        }
        if (ordinal % 17 == 0) {
            faults.add(Fault.FIRMWARE_STALE);
        }
        return faults;
    }

    private static void named(CustomerPlan owner, SitePlan plan, int index, Set<Fault> faults) {
        String where = owner.slug() + "/" + plan.slug() + "/" + index;
        switch (where) {
            case "saltmarsh/gull-island/2" -> faults.add(Fault.FLAPPING);
            case "brackwater/house/17" -> faults.add(Fault.CREDENTIAL_WRONG);
            case "pebblegate/canal-bridge/3" -> faults.add(Fault.RADIO_OFF);
            case "thistledown/yard/2" -> faults.add(Fault.CLOCK_1970);
            case "orrin-vale/lantern/2" -> faults.add(Fault.PORT_SLOW);
            default -> {
                // the rest of the named sites is well
            }
        }
        if (owner.slug().equals("orrin-vale") && plan.slug().equals("exchange")) {
            faults.add(Fault.FIRMWARE_STALE);
        }
    }

    private static void drawn(int ordinal, Set<Fault> faults) {
        switch (ordinal % EVERY) {
            case 31 -> faults.add(Fault.FLAPPING);
            case 77 -> faults.add(Fault.CREDENTIAL_WRONG);
            case 113 -> faults.add(Fault.RADIO_OFF);
            case 151 -> faults.add(Fault.CLOCK_1970);
            case 199 -> faults.add(Fault.PORT_SLOW);
            default -> {
                // most access points are well
            }
        }
    }
}
