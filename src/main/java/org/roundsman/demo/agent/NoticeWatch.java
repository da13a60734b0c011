package org.roundsman.demo.agent;

import java.util.BitSet;
import java.util.Optional;
import java.util.function.BiConsumer;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.DemoLink;
import org.roundsman.demo.DemoRadio;
import org.roundsman.demo.Fault;
import org.roundsman.demo.Faults;
import org.roundsman.demo.model.Outlook;

/**
 * Notices what changes in a fleet from one look to the next, and has the agent concerned tell it. A device that cannot
 * get through at that moment tells nothing, then or later. One thread at a time.
 */
final class NoticeWatch {

    private static final long MINUTE = 60_000;

    private final DemoFleet fleet;
    private final Faults faults;
    private final BiConsumer<AgentState, Notice> sender;
    private final long[] restarts;
    private final int[] bits;
    private final BitSet linked = new BitSet();
    private final BitSet starting = new BitSet();
    private final BitSet cold = new BitSet();
    /** Devices that may change within the minute. */
    private final BitSet restless = new BitSet();

    private final Outlook outlook = new Outlook();
    private final Outlook above = new Outlook();
    private long minute;
    private int version;

    NoticeWatch(Faults faults, long now, BiConsumer<AgentState, Notice> sender) {
        this.fleet = faults.fleet();
        this.faults = faults;
        this.sender = sender;
        this.restarts = new long[fleet.devices().size()];
        this.bits = new int[restarts.length];
        this.minute = Math.floorDiv(now, MINUTE);
        this.version = faults.version();
        for (DemoDevice device : fleet.devices()) {
            int i = device.number();
            faults.look(device, now, outlook);
            restarts[i] = outlook.restart;
            bits[i] = outlook.faults;
            linked.set(i, outlook.linked);
            starting.set(i, outlook.booting);
            restless.set(i, restless(i));
        }
    }

    /** Looks at everything that may have changed since the last look, and has it told. */
    void look(long now) {
        boolean all = Math.floorDiv(now, MINUTE) != minute || faults.version() != version;
        minute = Math.floorDiv(now, MINUTE);
        version = faults.version();
        if (all) {
            fleet.devices().forEach(device -> look(device, now));
        } else {
            for (int i = restless.nextSetBit(0); i >= 0; i = restless.nextSetBit(i + 1)) {
                look(fleet.devices().get(i), now);
            }
        }
    }

    private void look(DemoDevice device, long now) {
        int i = device.number();
        faults.look(device, now, outlook);
        boolean through = !outlook.silent;
        if (outlook.restart != restarts[i]) {
            boolean noPower = Fault.PORT_DEAD.in(bits[i]) || Fault.FLAPPING.in(bits[i]);
            restarts[i] = outlook.restart;
            starting.set(i);
            cold.set(i, noPower);
        }
        if (outlook.linked != linked.get(i)) {
            linked.set(i, outlook.linked);
            tellLink(device, outlook.linked, now);
        }
        if (starting.get(i) && outlook.linked && !outlook.booting) {
            starting.clear(i);
            tell(device, cold.get(i) ? Notice.coldStart() : Notice.warmStart(), through, now);
        }
        int changed = bits[i] ^ outlook.faults;
        bits[i] = outlook.faults;
        if (Fault.FAN_FAILED.in(changed)) {
            tell(device, Notice.fan(Fault.FAN_FAILED.in(bits[i])), through, now);
        }
        if (Fault.RADAR_SEEN.in(changed & bits[i])) {
            tellRadar(device, through, now);
        }
        restless.set(i, restless(i));
    }

    private boolean restless(int i) {
        return !linked.get(i) || starting.get(i) || Fault.FLAPPING.in(bits[i]);
    }

    /** It is the device above that sees its port change. */
    private void tellLink(DemoDevice device, boolean up, long now) {
        Optional<DemoLink> link = faults.cabling().up(device);
        if (link.isPresent()) {
            DemoDevice teller = faults.cabling().across(link.get(), device);
            faults.look(teller, now, above);
            int index = Port.numbered(teller, link.get().abovePort()).index();
            tell(teller, Notice.link(index, up), !above.silent, now);
        }
    }

    private void tellRadar(DemoDevice device, boolean through, long now) {
        for (DemoRadio radio : device.radios()) {
            if (radio.sharesWithRadar()) {
                tell(device, Notice.radar(radio.number(), radio.channelUnder(bits[device.number()])), through, now);
            }
        }
    }

    private void tell(DemoDevice device, Notice notice, boolean through, long now) {
        if (through) {
            AgentState agent = new AgentState(fleet, device, faults);
            agent.look(now);
            sender.accept(agent, notice);
        }
    }
}
