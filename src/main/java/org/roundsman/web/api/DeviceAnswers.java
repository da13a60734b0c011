package org.roundsman.web.api;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.NotFoundException;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceFacts;
import org.roundsman.fleet.Devices;
import org.roundsman.readings.DeviceRow;
import org.roundsman.readings.FleetBoard;

/** One device, put together. */
@ApplicationScoped
class DeviceAnswers {

    private final Devices devices;
    private final DeviceFacts facts;
    private final FleetBoard board;
    private final Caller caller;
    private final Tagged tagged;

    DeviceAnswers(Devices devices, DeviceFacts facts, FleetBoard board, Caller caller, Tagged tagged) {
        this.devices = devices;
        this.facts = facts;
        this.board = board;
        this.caller = caller;
        this.tagged = tagged;
    }

    RestResponse<DeviceJson> ok(long id) {
        return tagged.ok(json(id), entered(id));
    }

    RestResponse<DeviceJson> created(long id) {
        return tagged.created("/api/v1/devices/" + id, json(id), entered(id));
    }

    DeviceJson.Entry entered(long id) {
        return DeviceJson.Entry.of(find(id));
    }

    CustomerScope scope() {
        return caller.scope();
    }

    private Device find(long id) {
        return devices.find(caller.scope(), id).orElseThrow(NotFoundException::new);
    }

    private DeviceJson json(long id) {
        DeviceRow row = board.device(caller.scope(), id).orElseThrow(NotFoundException::new);
        boolean edits = caller.person().role().editsFleet();
        return DeviceJson.of(row, edits ? entered(id) : null, facts.of(id), facts.radios(id));
    }
}
