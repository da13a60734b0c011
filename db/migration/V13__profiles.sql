-- Profiles that people write, with every version of them; walks of devices that they are tried on; test cases.
create table written_profile (
    id             bigint generated always as identity primary key,
    name           text not null unique check (name ~ '^[a-z0-9][a-z0-9-]*$'),  -- as the key profile says
    version_in_use integer,                                   -- null = not in use
    created_at     timestamptz not null
);

-- Rows are added and never changed.
create table profile_version (
    profile_id bigint not null references written_profile on delete cascade,
    number     integer not null check (number >= 1),
    text       text not null,                                 -- YAML, with faults or without
    note       text not null default '',
    author     text not null,                                 -- sign-in name
    at         timestamptz not null,
    first_used timestamptz,                                   -- when it was first put in use
    primary key (profile_id, number)
);
alter table written_profile
    add foreign key (id, version_in_use) references profile_version (profile_id, number) deferrable initially deferred;

-- What a device answered to everything, in the text that net-snmp's snmpbulkwalk -On prints.
create table stored_walk (
    id          bigint generated always as identity primary key,
    customer_id bigint references customer on delete cascade, -- null = nobody's in particular
    device_id   bigint references device on delete set null,  -- null = pasted or uploaded
    name        text not null check (name <> ''),
    source      text not null check (source in ('DEVICE', 'TEXT')),
    object_id   text not null default '',                     -- its sysObjectID
    variables   integer not null check (variables >= 0),
    blanked     boolean not null,                             -- sysContact, sysName and sysLocation were taken out
    remarks     text not null default '',                     -- faulty lines and whatever else was odd when it came in
    taken_at    timestamptz not null,
    walk        bytea not null,                               -- gzip
    later_at    timestamptz,                                  -- a second walk of the same device: counters become rates
    later       bytea,                                        -- gzip
    author      text not null,
    added_at    timestamptz not null,
    check ((later_at is null) = (later is null))
);
create index stored_walk_of on stored_walk (customer_id);

-- A walk and what profiles are expected to make of it.
create table profile_case (
    walk_id  bigint primary key references stored_walk on delete cascade,
    expected jsonb not null,                                  -- [{"who": …, "key": …, "value": …}]
    author   text not null,
    at       timestamptz not null
);
