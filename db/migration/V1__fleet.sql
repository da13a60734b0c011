-- What people edit: customers, sites, devices, models, credentials; and what devices say about themselves.

create table customer (
    id         bigint generated always as identity primary key,
    name       text not null check (name <> ''),
    note       text not null default '',
    created_at timestamptz not null default now()
);
create unique index customer_name_once on customer (lower(name));

create table site (
    id               bigint generated always as identity primary key,
    customer_id      bigint not null references customer,
    name             text not null check (name <> ''),
    time_zone        text not null,                       -- IANA name, such as Europe/Berlin
    street           text not null default '',
    postcode         text not null default '',
    town             text not null default '',
    country          text not null default '',            -- ISO 3166-1 alpha-2, or empty
    access_note      text not null default '',            -- how to get in, where the ladder is
    uplink_down_kbit integer check (uplink_down_kbit > 0), -- kbit = 1000 bit; null = not known
    uplink_up_kbit   integer check (uplink_up_kbit > 0),
    created_at       timestamptz not null default now()
);
create unique index site_name_once on site (customer_id, lower(name));

-- Hours in which the site needs its Wi-Fi; local time of the site. None at all means around the clock.
create table site_hours (
    site_id  bigint not null references site on delete cascade,
    weekday  smallint not null check (weekday between 1 and 7), -- ISO 8601: 1 = Monday
    opens    time not null,
    closes   time not null,                                     -- 00:00 = midnight at the end of the day
    primary key (site_id, weekday, opens)
);

create table site_contact (
    id      bigint generated always as identity primary key,
    site_id bigint not null references site on delete cascade,
    name    text not null check (name <> ''),
    duty    text not null default '',
    phone   text not null default '',
    email   text not null default ''
);
create index site_contact_of on site_contact (site_id);

create table model (
    id        bigint generated always as identity primary key,
    maker     text not null,
    name      text not null,
    kind      text not null check (kind in ('ACCESS_POINT', 'NETWORK_SWITCH', 'GATEWAY')),
    object_id text unique,                                -- sysObjectID that this model answers with
    radios    smallint not null default 0 check (radios between 0 and 8),
    streams   smallint check (streams between 1 and 16),
    bands     text not null default '',                   -- such as 2.4,5
    antenna   text not null default '' check (antenna in ('', 'internal', 'external')),
    outdoor   boolean not null default false,
    poe_class smallint check (poe_class between 0 and 8), -- IEEE 802.3; null = mains or not known
    unique (maker, name)
);

-- SNMP credentials. What is secret is sealed with AES-GCM under a key that the database never sees.
create table credential (
    id            bigint generated always as identity primary key,
    customer_id   bigint references customer,             -- null = every customer's
    name          text not null check (name <> ''),
    version       smallint not null check (version in (1, 2, 3)), -- 2 = v2c
    user_name     text not null default '',
    level         text not null default 'NO_AUTH' check (level in ('NO_AUTH', 'AUTH', 'AUTH_PRIV')),
    auth_protocol text not null default '' check (auth_protocol in ('', 'SHA1', 'SHA224', 'SHA256', 'SHA384', 'SHA512')),
    priv_protocol text not null default '' check (priv_protocol in ('', 'AES128', 'AES192', 'AES256')),
    community     bytea,                                  -- sealed
    auth_secret   bytea,                                  -- sealed
    priv_secret   bytea,                                  -- sealed
    created_at    timestamptz not null default now(),
    check ((version in (1, 2)) = (community is not null)),
    check (version <> 3 or user_name <> '')
);
create unique index credential_name_once on credential (coalesce(customer_id, 0), lower(name));

create table device (
    id            bigint generated always as identity primary key,
    site_id       bigint not null references site,
    kind          text not null check (kind in ('ACCESS_POINT', 'NETWORK_SWITCH', 'GATEWAY')),
    name          text not null check (name <> ''),
    host          text not null check (host <> ''),       -- address or host name
    port          integer not null default 161 check (port between 1 and 65535),
    credential_id bigint not null references credential,
    model_id      bigint references model,
    place         text not null default '',               -- room, ceiling, mast
    interval_s    integer not null default 60 check (interval_s between 10 and 3600),
    paused        boolean not null default false,
    created_at    timestamptz not null default now(),
    unique (site_id, host, port)
);
create unique index device_name_once on device (site_id, lower(name));
create index device_credential on device (credential_id);

-- What a device said at its last slow read.
create table device_fact (
    device_id bigint not null references device on delete cascade,
    fact      text not null,
    value     text not null,
    since     timestamptz not null,                       -- when this value was first read
    primary key (device_id, fact)
);

create table radio (
    device_id bigint not null references device on delete cascade,
    number    smallint not null check (number between 1 and 32767),
    label     text not null default '',
    mac       text not null default '',
    primary key (device_id, number)
);

create table network (
    id      integer generated always as identity primary key,
    site_id bigint not null references site on delete cascade,
    ssid    text not null,
    purpose text not null default 'other' check (purpose in ('staff', 'guest', 'other')),
    unique (site_id, ssid)
);
