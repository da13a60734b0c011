package org.roundsman.visits;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.AlarmAct;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.Sites;

/** Gathers visit sheets. */
@ApplicationScoped
public class VisitSheets {

    /** More would not fit on two pages. */
    private static final int MOST_OTHERS = 24;

    private static final int MOST_UNITS = 3;
    private static final int MOST_DONE = 8;

    private final AlarmBook book;
    private final Sites sites;
    private final Units units;
    private final Clock clock;

    @Inject
    VisitSheets(AlarmBook book, Sites sites, Units units, Clock clock) {
        this.book = book;
        this.sites = sites;
        this.units = units;
        this.clock = clock;
    }

    /** Empty when there is no such alarm in the scope, and for one that lies at no site. */
    public Optional<VisitSheet> of(CustomerScope scope, long alarmId) {
        Optional<OpenAlarm> alarm = book.find(scope, alarmId);
        Optional<Site> site = alarm.filter(found -> found.siteId().isPresent())
                .flatMap(found -> sites.find(scope, found.siteId().getAsLong()));
        return site.map(found -> sheet(scope, alarm.orElseThrow(), found));
    }

    private VisitSheet sheet(CustomerScope scope, OpenAlarm alarm, Site site) {
        List<Device> all = units.ofSite(scope, site.id);
        List<Unit> looked = looked(scope, alarm, all);
        Set<Long> shown = new HashSet<>();
        looked.forEach(unit -> shown.add(unit.device().id));
        List<Device> others = others(scope, alarm, all).stream()
                .filter(device -> !shown.contains(device.id))
                .toList();
        return new VisitSheet(
                clock.instant(),
                alarm,
                site,
                looked,
                others.stream().limit(MOST_OTHERS).toList(),
                Math.max(0, others.size() - MOST_OTHERS),
                WhatToBring.of(looked),
                Cautions.of(looked, others),
                done(scope, alarm));
    }

    /** The device itself; of a whole site its gateways, else its switches, else whatever there is. */
    private List<Unit> looked(CustomerScope scope, OpenAlarm alarm, List<Device> all) {
        Resource resource = alarm.key().resource();
        if (resource.kind() == Resource.Kind.DEVICE) {
            return units.unit(scope, resource.id()).stream().toList();
        }
        return all.stream()
                .sorted(Comparator.comparing((Device device) -> device.kind).reversed())
                .filter(device -> device.kind == first(all))
                .limit(MOST_UNITS)
                .map(device -> units.unit(scope, device))
                .toList();
    }

    private static DeviceKind first(List<Device> all) {
        return all.stream()
                .map(device -> device.kind)
                .max(Comparator.naturalOrder())
                .orElse(DeviceKind.GATEWAY);
    }

    private List<Device> others(CustomerScope scope, OpenAlarm alarm, List<Device> all) {
        Resource resource = alarm.key().resource();
        if (resource.kind() == Resource.Kind.SITE) {
            return all;
        }
        List<Long> around = units.around(scope, resource.id());
        return all.stream()
                .filter(device -> around.contains(device.id))
                .sorted(Comparator.comparingInt(device -> around.indexOf(device.id)))
                .toList();
    }

    private List<AlarmAct> done(CustomerScope scope, OpenAlarm alarm) {
        List<AlarmAct> acts = book.acts(scope, alarm.id()).stream()
                .filter(act -> act.episodeId() == alarm.episodeId())
                .sorted(Comparator.comparing(AlarmAct::at).thenComparing(AlarmAct::id))
                .toList();
        return acts.subList(Math.max(0, acts.size() - MOST_DONE), acts.size());
    }
}
