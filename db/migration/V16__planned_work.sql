-- Windows in which a site or a device is worked on: time in them counts for nobody. Rows are never deleted by themselves.

create table planned_work (
    id           bigint generated always as identity primary key,
    reach        text not null check (reach in ('CUSTOMER', 'SITE', 'DEVICE')),
    customer_id  bigint not null references customer on delete cascade,
    site_id      bigint references site on delete cascade,   -- of a device: where it stood when this was made
    device_id    bigint references device on delete set null, -- null also when the device has left the fleet
    device_name  text not null default '',                   -- as it was when this was made
    title        text not null check (title <> ''),
    reason       text not null default '',
    kind         text not null check (kind in ('ONCE', 'DAILY', 'WEEKLY', 'MONTH_DAY', 'MONTH_WEEKDAY')),
    from_at      timestamptz,                                -- ONCE
    to_at        timestamptz,                                -- ONCE
    start_time   time,                                       -- by the clock of each site
    length_s     integer check (length_s > 0),               -- seconds of real elapsed time
    weekdays     integer[] not null default '{}',            -- WEEKLY and MONTH_WEEKDAY; ISO 8601: 1 = Monday
    which        smallint,                                   -- MONTH_DAY: 1 to 31; MONTH_WEEKDAY: 1 to 4; -1 = the last
    first_day    date,
    last_day     date,                                       -- on which one may begin; null = no end
    skipped      date[] not null default '{}',
    made_by      text not null,
    made_at      timestamptz not null,
    replaces     bigint references planned_work,             -- the window whose place it took when times were changed
    counts_from  timestamptz,                                -- nothing before counts; null = no such bound
    counts_until timestamptz,                                -- nothing after counts; null = no such bound
    stop         text check (stop in ('CANCELLED', 'REPLACED')),
    stopped_by   text not null default '',
    over_at      timestamptz,                                -- when nothing comes any more; null = it goes on for ever
    check (reach = 'CUSTOMER' or site_id is not null),
    check ((kind = 'ONCE') = (from_at is not null and to_at is not null and from_at < to_at)),
    check ((kind <> 'ONCE') = (start_time is not null and length_s is not null and first_day is not null)),
    check ((stop is not null) = (counts_until is not null))
);
create index planned_work_customer on planned_work (customer_id, over_at);
create index planned_work_site on planned_work (site_id, over_at);
create index planned_work_device on planned_work (device_id, over_at);
create index planned_work_over on planned_work (over_at desc, id desc);

-- Somebody said that the work was done before its time: what was going on at that moment ended with it.
create table planned_work_end (
    work_id  bigint not null references planned_work on delete cascade,
    at       timestamptz not null,
    ended_by text not null,
    primary key (work_id, at)
);
