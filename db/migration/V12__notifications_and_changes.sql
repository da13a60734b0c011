-- Notifications that devices send, and what changes about devices.

-- Our own SNMP engine (RFC 3411), to which informs are addressed. The identity stays; boots count the starts.
create table own_engine (
    one       boolean primary key default true check (one),
    engine_id bytea not null check (octet_length(engine_id) between 5 and 32),
    boots     integer not null check (boots >= 1)
);

-- Notifications without a name: counted per device, not stored one by one.
create table device_notification (
    device_id bigint primary key references device on delete cascade,
    count     bigint not null check (count > 0),
    first_at  timestamptz not null,
    last_at   timestamptz not null,
    last_oid  text not null
);

-- When a device's facts were read in full: what was read before the last time changes nothing any more.
create table device_survey (
    device_id bigint primary key references device on delete cascade,
    first_at  timestamptz not null,
    last_at   timestamptz not null
);

-- Complete reads in a row that did not bring it: gone at the second.
alter table device_fact add column missing smallint not null default 0;
alter table radio add column missing smallint not null default 0;

-- Which SSIDs a device carries.
create table device_network (
    device_id  bigint not null references device on delete cascade,
    network_id integer not null references network on delete cascade,
    since      timestamptz not null,                      -- when it was first read
    missing    smallint not null default 0,
    primary key (device_id, network_id)
);
create index device_network_of on device_network (network_id);

-- A page that waits for news asks for a device's last event only.
create index device_event_last on device_event (device_id, id desc);
