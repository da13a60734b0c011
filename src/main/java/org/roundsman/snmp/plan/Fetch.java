package org.roundsman.snmp.plan;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.function.Consumer;
import org.roundsman.snmp.session.Request;
import org.snmp4j.PDU;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.Variable;
import org.snmp4j.smi.VariableBinding;

/** Reads object instances by Get: as many at once as a reply can carry, one request after the other. */
final class Fetch {

    /** One Get: its slots in order, and the request made once. */
    record Portion(List<Slot> slots, Request request) {
        static Portion of(List<Slot> slots) {
            return new Portion(slots, Shared.get(slots.stream().map(s -> s.oid).toList()));
        }
    }

    private final Errand errand;
    private final Limits limits;
    private final Deque<Portion> left;
    private final Consumer<Boolean> done;
    private boolean complete = true;

    private Fetch(Errand errand, Limits limits, List<Portion> portions, Consumer<Boolean> done) {
        this.errand = errand;
        this.limits = limits;
        this.left = new ArrayDeque<>(portions);
        this.done = done;
    }

    /**
     * Asks portions one after the other.
     *
     * @param done hears whether every one was answered; the slots then have their values
     */
    static void start(Errand errand, Limits limits, List<Portion> portions, Consumer<Boolean> done) {
        new Fetch(errand, limits, portions, done).next();
    }

    /** Cuts slots into portions whose replies stay within one datagram. */
    static List<Portion> portions(List<Slot> slots, Limits limits) {
        List<Portion> portions = new ArrayList<>();
        List<Slot> some = new ArrayList<>();
        int octets = 0;
        for (Slot slot : slots) {
            if (limits.refused().contains(slot.oid)) {
                slot.take(null);
                continue;
            }
            int size = slot.size();
            boolean full = octets + size > Limits.REPLY_OCTETS || some.size() >= limits.mostVariables();
            if (full && !some.isEmpty()) {
                portions.add(Portion.of(some));
                some = new ArrayList<>();
                octets = 0;
            }
            some.add(slot);
            octets += size;
        }
        if (!some.isEmpty()) {
            portions.add(Portion.of(some));
        }
        return portions;
    }

    private void next() {
        Portion portion = left.poll();
        if (portion == null) {
            done.accept(complete);
            return;
        }
        errand.ask(portion.request(), pdu -> take(portion, pdu), () -> {
            // An agent that fell silent in the middle is not asked the rest.
            done.accept(false);
        });
    }

    private void take(Portion portion, PDU pdu) {
        if (pdu.getErrorStatus() != PDU.noError) {
            errand.noteRefusal();
        }
        switch (pdu.getErrorStatus()) {
            case PDU.noError -> values(portion, pdu);
            case PDU.tooBig -> halve(portion);
            default -> without(portion, pdu);
        }
        next();
    }

    private void values(Portion portion, PDU pdu) {
        List<? extends VariableBinding> bindings = pdu.getVariableBindings();
        List<Slot> slots = portion.slots();
        for (int i = 0; i < slots.size(); i++) {
            Slot slot = slots.get(i);
            VariableBinding binding = i < bindings.size() ? bindings.get(i) : null;
            if (binding == null || !binding.getOid().equals(slot.oid)) {
                errand.remark("the reply does not carry " + name(slot.oid) + " where it was asked");
                complete = false;
            } else {
                slot.take(valueOf(binding));
            }
        }
    }

    /** The value of a variable; null for noSuchObject, noSuchInstance, endOfMibView and NULL. */
    static Variable valueOf(VariableBinding binding) {
        return binding.isException() || binding.getVariable() instanceof org.snmp4j.smi.Null
                ? null
                : binding.getVariable();
    }

    private void halve(Portion portion) {
        List<Slot> slots = portion.slots();
        limits.tooBig(slots.size());
        if (slots.size() == 1) {
            errand.remark(name(slots.get(0).oid) + " is too big for the device's replies");
            return;
        }
        int half = slots.size() / 2;
        left.push(Portion.of(slots.subList(half, slots.size())));
        left.push(Portion.of(slots.subList(0, half)));
    }

    /** SNMPv1 refuses a whole Get for one name that it lacks; other errors name one variable as well. */
    private void without(Portion portion, PDU pdu) {
        int place = pdu.getErrorIndex() - 1;
        if (place < 0 || place >= portion.slots().size()) {
            errand.remark("the device refused a Get: " + pdu.getErrorStatusText());
            complete = false;
            return;
        }
        List<Slot> rest = new ArrayList<>(portion.slots());
        Slot removed = rest.remove(place);
        if (pdu.getErrorStatus() == PDU.noSuchName) {
            limits.refused().add(removed.oid);
            removed.take(null);
        } else {
            errand.remark("the device has an error at " + name(removed.oid) + ": " + pdu.getErrorStatusText());
        }
        if (!rest.isEmpty()) {
            left.push(Portion.of(rest));
        }
    }

    private static String name(OID oid) {
        return oid.toDottedString();
    }
}
