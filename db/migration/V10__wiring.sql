-- What hangs on what: ports, neighbours and learnt addresses as switches and gateways show them, what people said about
-- it, and what was made of both.

-- The last reading of each device's wiring, and what it says about itself.
create table wiring_read (
    device_id    bigint primary key references device on delete cascade,
    tried_at     timestamptz not null,
    outcome      smallint not null,                       -- code of org.roundsman.measure.Outcome
    read_at      timestamptz,                             -- last full reading that was answered
    state_at     timestamptz,                             -- last reading of port and power states
    complete     boolean not null default false,          -- of that full reading: no table was cut short
    chassis_kind smallint,                                -- LldpChassisIdSubtype (IEEE 802.1AB); null = no LLDP
    chassis_id   bytea,
    system_name  text not null default '',
    bridge       boolean not null default false,          -- offers a forwarding table
    lldp         boolean not null default false,
    power        boolean not null default false,          -- offers POWER-ETHERNET-MIB
    requests     integer not null default 0,              -- of the last full reading
    remarks      text[] not null default '{}'
);

create table wiring_supply (
    device_id  bigint not null references device on delete cascade,
    pse_group  integer not null,
    state      smallint not null,                         -- pethMainPseOperStatus
    watts      integer not null,                          -- nominal
    used_watts integer not null,
    primary key (device_id, pse_group)
);

create table wiring_port (
    device_id     bigint not null references device on delete cascade,
    number        integer not null,                       -- ifIndex; negative where only a local LLDP number is known
    name          text not null default '',
    description   text not null default '',
    alias         text not null default '',
    mac           text not null default '',
    kind          integer not null default 0,             -- ifType, 0 = not known
    bridge_port   integer,
    speed_mbit    bigint,
    state         smallint not null default 4,            -- ifOperStatus
    macs          integer not null default 0,             -- addresses learnt on it at the last full reading
    power_group   integer,                                -- null: delivers no power, or not known to
    power_port    integer,
    power_state   smallint,                               -- pethPsePortDetectionStatus
    power_class   smallint,                               -- 0 to 4, only while it delivers
    power_enabled boolean,
    power_match   text,                                   -- how the PoE port was found to be this one
    present       boolean not null default true,          -- was there at the last full reading
    primary key (device_id, number)
);

create table wiring_address (
    device_id bigint not null references device on delete cascade,
    mac       text not null,
    primary key (device_id, mac)
);
create index wiring_address_mac on wiring_address (mac);

create table wiring_neighbour (
    id           bigint generated always as identity primary key,
    device_id    bigint not null references device on delete cascade,
    port         integer not null,
    local_port   integer not null,                        -- lldpRemLocalPortNum
    port_by      text not null,                           -- how the local number was found to be this port
    chassis_kind smallint not null,
    chassis_id   bytea not null,
    port_kind    smallint not null,
    port_id      bytea not null,
    port_text    text not null default '',
    system_name  text not null default '',
    system_text  text not null default '',
    abilities    integer not null default 0,              -- lldpRemSysCapEnabled: bit 7 - n of the octet is number n
    addresses    text[] not null default '{}',
    first_seen   timestamptz not null,
    last_seen    timestamptz not null,
    missed       smallint not null default 0,             -- complete readings since in which it was not there
    unique (device_id, port, chassis_kind, chassis_id, port_kind, port_id)
);

-- Where addresses of known devices were learnt; those of clients are only counted (wiring_port.macs).
create table wiring_learnt (
    device_id  bigint not null references device on delete cascade,
    mac        text not null,
    port       integer not null,
    first_seen timestamptz not null,
    last_seen  timestamptz not null,
    missed     smallint not null default 0,
    primary key (device_id, mac, port)
);

-- What a person said: it holds until it is taken back.
create table wiring_word (
    device_id bigint primary key references device on delete cascade,
    parent_id bigint not null references device on delete cascade,
    port      integer,                                    -- null: on that device, the port is not known
    port_name text not null default '',
    note      text not null default '',
    said_by   text not null,
    said_at   timestamptz not null,
    check (device_id <> parent_id)
);

-- What was made of all that.
create table wiring_attachment (
    device_id  bigint primary key references device on delete cascade,
    parent_id  bigint references device on delete cascade, -- null: nothing is known
    port       integer,
    port_name  text not null default '',
    how        text not null check (how in ('PERSON', 'LLDP', 'FORWARDING', 'NOTHING')),
    reason     text not null default '',
    notes      text[] not null default '{}',              -- what speaks against it
    old        boolean not null default false,            -- its evidence was missing at the last readings
    seen_at    timestamptz,
    check (parent_id is null or parent_id <> device_id),
    check ((how = 'NOTHING') = (parent_id is null))
);
create index wiring_attachment_parent on wiring_attachment (parent_id);
