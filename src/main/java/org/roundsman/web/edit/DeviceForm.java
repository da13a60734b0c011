package org.roundsman.web.edit;

import java.util.Arrays;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.DeviceKind;

/** What a device's form sent, as text, to be shown again when something in it is wrong. */
record DeviceForm(
        @RestForm String name,
        @RestForm String kind,
        @RestForm String host,
        @RestForm String port,
        @RestForm String credentialId,
        @RestForm String modelId,
        @RestForm String place,
        @RestForm String intervalSeconds,
        @RestForm String paused) {

    static DeviceForm blank() {
        return new DeviceForm("", DeviceKind.ACCESS_POINT.name(), "", "161", "", "", "", "60", "");
    }

    static DeviceForm of(Device device) {
        return new DeviceForm(
                device.name,
                device.kind.name(),
                device.host,
                String.valueOf(device.port),
                device.credential.id.toString(),
                device.model == null ? "" : device.model.id.toString(),
                device.place,
                String.valueOf(device.intervalSeconds),
                device.paused ? "yes" : "");
    }

    public boolean isPaused() {
        return "yes".equals(paused);
    }

    DeviceDraft draft(Entry entry) {
        return new DeviceDraft(
                Entry.text(name),
                Arrays.stream(DeviceKind.values())
                        .filter(one -> one.name().equals(kind))
                        .findFirst()
                        .orElse(null),
                Entry.text(host).strip(),
                entry.number("port", Entry.text(port)),
                entry.id("credentialId", Entry.text(credentialId)),
                entry.id("modelId", Entry.text(modelId)),
                Entry.text(place),
                entry.number("intervalSeconds", Entry.text(intervalSeconds)),
                isPaused());
    }
}
