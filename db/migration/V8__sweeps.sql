-- Looking for devices at a site: what is entered for it, the sweeps that were made, and what they found.

create table sweep_plan (
    site_id     bigint primary key references site on delete cascade,
    ranges      text not null,                            -- as entered, one a line
    ports       integer[] not null,                       -- UDP ports to ask
    credentials bigint[]                                  -- those to try; null = all that are usable at the site
);

-- An address that somebody said is not ours: sweeps of the site leave it out.
create table sweep_aside (
    site_id bigint not null references site on delete cascade,
    host    text not null,
    port    integer not null,
    said_by text not null,
    at      timestamptz not null,
    primary key (site_id, host, port)
);

create table sweep (
    id          bigint generated always as identity primary key,
    site_id     bigint not null references site on delete cascade,
    state       text not null check (state in ('RUNNING', 'DONE', 'CANCELLED')),
    ranges      text not null,
    ports       integer[] not null,
    credentials bigint[] not null,                        -- in the order in which they are tried
    total       integer not null check (total between 1 and 4096), -- addresses, each once for each port
    started_by  text not null,
    started_at  timestamptz not null,
    ended_at    timestamptz,
    remark      text not null default ''
);
create unique index sweep_once_at_a_time on sweep (site_id) where state = 'RUNNING';
create index sweep_of on sweep (site_id, id desc);

-- What became of each address; one that has no row has still to be asked.
create table sweep_address (
    sweep_id bigint not null references sweep on delete cascade,
    place    integer not null,                            -- its number in the ranges and ports of the sweep
    outcome  smallint not null,                           -- code of org.roundsman.measure.Outcome; -1 = left out
    primary key (sweep_id, place)
);

-- Who answered, or refused our credentials.
create table sweep_finding (
    id            bigint generated always as identity primary key,
    sweep_id      bigint not null references sweep on delete cascade,
    place         integer not null,
    host          text not null,
    port          integer not null,
    outcome       smallint not null,                      -- code of org.roundsman.measure.Outcome
    credential_id bigint references credential on delete set null, -- which let us in, or was refused
    at            timestamptz not null,
    uptime_s      double precision,                       -- seconds since the device started, null = not told
    profiles      text[] not null,
    facts         jsonb not null,                         -- {"values": {…}, "radios": […], "networks": […]}
    remark        text not null default '',
    review        jsonb,                                  -- what a person entered in the list, null = nothing yet
    adopted_as    bigint references device on delete set null,
    adopted_at    timestamptz,
    unique (sweep_id, place)
);
create index sweep_finding_credential on sweep_finding (credential_id);
create index sweep_finding_adopted on sweep_finding (adopted_as);

-- A device is looked up by what it says about itself.
create index device_fact_identity on device_fact (upper(btrim(value)))
    where fact in ('SERIAL', 'BASE_MAC', 'ENGINE_ID');
create index radio_mac on radio (mac) where mac <> '';
