-- Units of hardware, the places where they stand, claims under warranty, and spares.

-- One unit, by its serial number. A device is a place; which unit stands there changes.
create table unit (
    id          bigint generated always as identity primary key,
    customer_id bigint references customer,               -- whose it is; null = the firm's own
    serial      text not null check (serial <> ''),       -- as the maker wrote it; unique per owner without regard to case
    model_id    bigint references model on delete set null,
    mac         text not null default '',                 -- base address, where a device told it
    fate        text not null default '' check (fate in ('', 'SENT_BACK', 'SCRAPPED')),
    fate_since  timestamptz,
    known_since timestamptz not null,                     -- when it was first read or entered
    check ((fate = '') = (fate_since is null))
);
create unique index unit_serial_once on unit (coalesce(customer_id, 0), lower(serial));
create index unit_model on unit (model_id);

-- Which unit stood where from when to when. Names are kept, for devices and sites that leave the fleet.
create table unit_stay (
    id            bigint generated always as identity primary key,
    unit_id       bigint not null references unit on delete cascade,
    customer_id   bigint not null references customer,
    site_id       bigint references site on delete set null,
    device_id     bigint references device on delete set null,
    device_name   text not null,
    site_name     text not null,
    from_at       timestamptz not null,
    until_at      timestamptz,                            -- null while it stands there
    standing      text not null check (standing in ('READ', 'ENTERED', 'ANNOUNCED', 'CONFIRMED')),
    announced_by  text not null default '',
    announced_at  timestamptz,
    said_instead  text not null default '',               -- the serial number that the device says against the announced one
    said_since    timestamptz,
    check (until_at is null or until_at >= from_at),
    check ((standing in ('READ', 'ENTERED')) = (announced_at is null)),
    check ((said_instead = '') = (said_since is null))
);
create unique index unit_stay_now on unit_stay (device_id) where until_at is null;
create index unit_stay_unit on unit_stay (unit_id, from_at);
create index unit_stay_device on unit_stay (device_id, from_at);
create index unit_stay_waiting on unit_stay (device_id) where until_at is null and standing = 'ANNOUNCED';

-- How far the timeline has been read for changes of serial numbers.
create table unit_cursor (
    one      boolean primary key default true check (one),
    event_id bigint not null
);

-- Where spares lie: the firm's own rooms, or those of a customer.
create table store_room (
    id          bigint generated always as identity primary key,
    customer_id bigint references customer,               -- null = the firm's own
    name        text not null check (name <> ''),
    note        text not null default '',
    created_at  timestamptz not null default now()
);
create unique index store_room_name_once on store_room (coalesce(customer_id, 0), lower(name));

-- How many of a model should lie in a room.
create table store_minimum (
    room_id  bigint not null references store_room on delete cascade,
    model_id bigint not null references model on delete cascade,
    least    integer not null check (least between 1 and 1000),
    primary key (room_id, model_id)
);

-- A unit in store, in a room or at a site; kept when it has left.
create table spare (
    id       bigint generated always as identity primary key,
    unit_id  bigint not null references unit on delete cascade,
    room_id  bigint references store_room,
    site_id  bigint references site on delete cascade,
    since    timestamptz not null,
    note     text not null default '',
    left_at  timestamptz,
    left_why text not null default '',
    left_by  text not null default '',
    check ((room_id is null) <> (site_id is null)),
    check ((left_at is null) = (left_why = ''))
);
create unique index spare_unit_once on spare (unit_id) where left_at is null;
create index spare_room on spare (room_id) where left_at is null;
create index spare_site on spare (site_id);

-- What was known when a claim was opened is kept in it as text, so that it reads the same later.
create table claim (
    id              bigint generated always as identity primary key,
    customer_id     bigint not null references customer,
    unit_id         bigint not null references unit,
    site_id         bigint references site on delete set null,
    device_id       bigint references device on delete set null,
    alarm_id        bigint,                               -- from which it was opened; alarms are tidied away before claims
    state           text not null check (state in ('OPENED', 'SENT', 'REPLACED', 'REFUSED', 'CLOSED')),
    opened_at       timestamptz not null,
    opened_by       text not null,
    changed_at      timestamptz not null,                 -- last change of the state
    serial          text not null,
    model           text not null,
    place           text not null,                        -- name, place and site
    time_zone       text not null,
    fault           text not null,                        -- what a person says is wrong
    terms           text not null,
    cover           text not null,
    derivation      text[] not null default '{}',
    evidence        text[] not null default '{}',
    failure         text[] not null default '{}',         -- worked out from the readings
    party           text not null default '',             -- maker or supplier that it is made to
    reference       text not null default '',             -- their number for it
    shipped_on      date,
    tracking        text not null default '',
    new_unit_id     bigint references unit on delete set null -- what took its place
);
create unique index claim_open_once on claim (unit_id) where state <> 'CLOSED';
create index claim_customer on claim (customer_id, opened_at desc);
create index claim_device on claim (device_id);
create index claim_state on claim (state, opened_at desc);

create table claim_change (
    id         bigint generated always as identity primary key,
    claim_id   bigint not null references claim on delete cascade,
    at         timestamptz not null,
    by         text not null,
    from_state text not null default '',                  -- empty where it was opened
    to_state   text not null,                             -- the same as before where only something was noted
    note       text not null default ''
);
create index claim_change_of on claim_change (claim_id, id);
