-- Values of rules that people laid over the shipped ones, and what rules must remember of devices for ever.

create table rule_override (
    id          bigint generated always as identity primary key,
    type        text not null,                            -- id of org.roundsman.alarms.AlarmType
    level       text not null check (level in ('ALL', 'MODEL', 'CUSTOMER', 'SITE', 'DEVICE')),
    customer_id bigint references customer on delete cascade,
    site_id     bigint references site on delete cascade,
    model_id    bigint references model on delete cascade,
    device_id   bigint references device on delete cascade,
    target_id   bigint not null generated always as (coalesce(customer_id, site_id, model_id, device_id, 0)) stored,
    fields      jsonb not null,                           -- by key of org.roundsman.rules.RuleField, only what differs
    reason      text not null default '',
    version     integer not null default 1,
    author      text not null,                            -- sign-in name
    at          timestamptz not null,
    check ((level = 'CUSTOMER') = (customer_id is not null)),
    check ((level = 'SITE') = (site_id is not null)),
    check ((level = 'MODEL') = (model_id is not null)),
    check ((level = 'DEVICE') = (device_id is not null)),
    unique (type, level, target_id)
);
create index rule_override_customer on rule_override (customer_id) where customer_id is not null;
create index rule_override_site on rule_override (site_id) where site_id is not null;
create index rule_override_model on rule_override (model_id) where model_id is not null;
create index rule_override_device on rule_override (device_id) where device_id is not null;

-- What was seen of a device at any time, however long ago: raw readings do not reach back so far.
create table rule_memory (
    device_id    bigint primary key references device on delete cascade,
    fastest_mbit real,                                    -- fastest speed ever seen on its uplink port
    radios       jsonb not null default '{}',             -- by number: what it showed while on the air, as bits
    serial       text not null default ''                 -- of the unit that this is about: another unit starts anew
);
