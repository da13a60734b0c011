-- What happened to a device: facts that changed, notifications it sent, where it moved. Newest last.
create table device_event (
    id        bigint generated always as identity primary key,
    device_id bigint not null references device on delete cascade,
    at        timestamptz not null,                       -- when it happened, or was first seen
    kind      text not null check (kind <> ''),           -- name of org.roundsman.timeline.EventKind
    title     text not null check (title <> ''),          -- what a person reads
    old_value text not null default '',
    new_value text not null default '',
    detail    text not null default ''                    -- more lines, such as the variables of a notification
);
create index device_event_of on device_event (device_id, at desc, id desc);
create index device_event_time on device_event using brin (at);
