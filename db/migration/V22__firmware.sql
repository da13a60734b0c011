-- Which firmware is to run where, and how upgrades went. A line or a model that something is decided about cannot be removed.

-- What is decided about a release of a line: for all its models, or for one, which then goes before.
create table firmware_release (
    id           bigint generated always as identity primary key,
    line_id      bigint not null references firmware_line,
    model_id     bigint references model,                   -- null = all models of the line
    version      text not null check (version <> ''),       -- as devices tell it
    stand        text not null check (stand in ('RECOMMENDED', 'ACCEPTED', 'PILOT', 'WITHDRAWN')),
    reason       text not null default '',                  -- of a withdrawal; else a note
    withdrawn_on date,
    released_on  date,                                      -- by the maker; null = not known
    check ((stand = 'WITHDRAWN') = (withdrawn_on is not null)),
    check (stand <> 'WITHDRAWN' or reason <> '')
);
create unique index firmware_release_once on firmware_release (line_id, coalesce(model_id, 0), version);
create unique index firmware_release_recommended on firmware_release (line_id, coalesce(model_id, 0))
    where stand = 'RECOMMENDED';
create unique index firmware_release_pilot on firmware_release (line_id, coalesce(model_id, 0)) where stand = 'PILOT';
create index firmware_release_model on firmware_release (model_id);

-- What is older than this lacks the fix of that advisory.
create table firmware_minimum (
    id         bigint generated always as identity primary key,
    line_id    bigint not null references firmware_line,
    model_id   bigint references model,                     -- null = all models of the line
    version    text not null check (version <> ''),
    identifier text not null check (identifier <> ''),      -- such as the number of an advisory
    note       text not null default ''
);
create unique index firmware_minimum_once on firmware_minimum (line_id, coalesce(model_id, 0), lower(identifier));
create index firmware_minimum_model on firmware_minimum (model_id);

-- Sites that run the pilot release of a line before all others.
create table firmware_pilot_site (
    line_id bigint not null references firmware_line,
    site_id bigint not null references site on delete cascade,
    primary key (line_id, site_id)
);
create index firmware_pilot_site_of on firmware_pilot_site (site_id);

-- A customer's devices may run something else until the end of that day, by the clock of each site.
create table firmware_exception (
    id          bigint generated always as identity primary key,
    line_id     bigint not null references firmware_line,
    customer_id bigint not null references customer on delete cascade,
    version     text not null default '',                   -- empty = whatever runs there
    reason      text not null check (reason <> ''),
    last_day    date not null,
    made_by     text not null,
    made_at     timestamptz not null
);
create index firmware_exception_line on firmware_exception (line_id);
create index firmware_exception_customer on firmware_exception (customer_id);

-- A change of firmware that a device was seen to make, and how it did in the week before and after.
create table firmware_change (
    id           bigint generated always as identity primary key,
    device_id    bigint not null references device on delete cascade,
    event_id     bigint not null unique,                    -- number of the event on the timeline
    at           timestamptz not null,                      -- when the other version was first read
    old_version  text not null,
    new_version  text not null,
    restarted_at timestamptz,                               -- restart about the same time; null = none was seen
    compared_at  timestamptz,                               -- when the figures were last worked out; null = not yet
    settled      boolean not null default false,            -- the figures change no more
    unique (device_id, at)
);
create index firmware_change_time on firmware_change (at desc, id desc);
create index firmware_change_open on firmware_change (at) where not settled;

create table firmware_change_figure (
    change_id bigint not null references firmware_change on delete cascade,
    figure    text not null check (figure in ('CLIENTS', 'RETRIES', 'UTILISATION')),
    before    double precision not null,                    -- mean over the hours that both weeks have
    after     double precision not null,
    quarters  integer not null check (quarters > 0),        -- quarter hours that both weeks have
    primary key (change_id, figure)
);

-- Up to which event the timeline was looked through.
create table firmware_look (
    one      boolean primary key default true check (one),
    event_id bigint not null default 0
);
insert into firmware_look default values;
