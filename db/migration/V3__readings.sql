-- What rounds brought back. Written by COPY, never through the ORM. Missing is null, never zero.
-- Raw readings are partitioned by UTC day and roll-ups by UTC month; retention drops whole partitions.

create table reading_device (
    device_id    bigint not null,
    at           timestamptz not null,
    outcome      smallint not null,                       -- code of org.roundsman.measure.Outcome
    next_in_s    integer not null,                        -- when the next round was due, from at
    round_trip   real,                                    -- ms
    uptime       double precision,                        -- s
    cpu          real,                                    -- %
    memory       real,                                    -- %
    clients      integer,
    port_speed   real,                                    -- Mb/s
    port_in      real,                                    -- bit/s
    port_out     real,                                    -- bit/s
    port_errors  real,                                    -- 1/s
    clock_offset double precision,                        -- s
    primary key (device_id, at)
) partition by range (at);

create table reading_radio (
    device_id   bigint not null,
    number      smallint not null,
    at          timestamptz not null,
    band        real,                                     -- 2.4, 5, 6
    channel     smallint,
    width       real,                                     -- MHz
    tx_power    real,                                     -- dBm
    noise       real,                                     -- dBm
    clients     integer,
    utilisation real,                                     -- %
    retries     real,                                     -- %
    primary key (device_id, number, at)
) partition by range (at);

create table reading_network (
    device_id  bigint not null,
    network_id integer not null,
    at         timestamptz not null,
    clients    integer,
    primary key (device_id, network_id, at)
) partition by range (at);

-- Rows arrive nearly in time order, so a block range index finds one quarter hour of all devices at next to no cost.
create index reading_device_time on reading_device using brin (at) with (pages_per_range = 32, autosummarize = on);
create index reading_radio_time on reading_radio using brin (at) with (pages_per_range = 32, autosummarize = on);
create index reading_network_time on reading_network using brin (at) with (pages_per_range = 32, autosummarize = on);

-- Quarter hours and days. Per metric: count, min, mean, max of the raw readings in the bucket.
create table quarter_device (
    device_id bigint not null,
    at        timestamptz not null,                       -- start of the quarter hour
    round_trip_n smallint not null default 0, round_trip_min real, round_trip_mean real, round_trip_max real,
    cpu_n        smallint not null default 0, cpu_min        real, cpu_mean        real, cpu_max        real,
    memory_n     smallint not null default 0, memory_min     real, memory_mean     real, memory_max     real,
    clients_n    smallint not null default 0, clients_min    real, clients_mean    real, clients_max    real,
    port_in_n    smallint not null default 0, port_in_min    real, port_in_mean    real, port_in_max    real,
    port_out_n   smallint not null default 0, port_out_min   real, port_out_mean   real, port_out_max   real,
    port_errors_n smallint not null default 0, port_errors_min real, port_errors_mean real, port_errors_max real,
    primary key (device_id, at)
) partition by range (at);

create table quarter_radio (
    device_id bigint not null,
    number    smallint not null,
    at        timestamptz not null,
    noise_n       smallint not null default 0, noise_min       real, noise_mean       real, noise_max       real,
    clients_n     smallint not null default 0, clients_min     real, clients_mean     real, clients_max     real,
    utilisation_n smallint not null default 0, utilisation_min real, utilisation_mean real, utilisation_max real,
    retries_n     smallint not null default 0, retries_min     real, retries_mean     real, retries_max     real,
    primary key (device_id, number, at)
) partition by range (at);

create table quarter_network (
    device_id  bigint not null,
    network_id integer not null,
    at         timestamptz not null,
    clients_n smallint not null default 0, clients_min real, clients_mean real, clients_max real,
    primary key (device_id, network_id, at)
) partition by range (at);

create index quarter_device_time on quarter_device using brin (at) with (pages_per_range = 32, autosummarize = on);
create index quarter_radio_time on quarter_radio using brin (at) with (pages_per_range = 32, autosummarize = on);

-- Days are the site's own (its time zone); built from quarters, weighted by their counts.
create table day_device (
    device_id bigint not null,
    day       date not null,
    round_trip_n integer not null default 0, round_trip_min real, round_trip_mean real, round_trip_max real,
    cpu_n        integer not null default 0, cpu_min        real, cpu_mean        real, cpu_max        real,
    memory_n     integer not null default 0, memory_min     real, memory_mean     real, memory_max     real,
    clients_n    integer not null default 0, clients_min    real, clients_mean    real, clients_max    real,
    port_in_n    integer not null default 0, port_in_min    real, port_in_mean    real, port_in_max    real,
    port_out_n   integer not null default 0, port_out_min   real, port_out_mean   real, port_out_max   real,
    port_errors_n integer not null default 0, port_errors_min real, port_errors_mean real, port_errors_max real,
    primary key (device_id, day)
);

create table day_radio (
    device_id bigint not null,
    number    smallint not null,
    day       date not null,
    noise_n       integer not null default 0, noise_min       real, noise_mean       real, noise_max       real,
    clients_n     integer not null default 0, clients_min     real, clients_mean     real, clients_max     real,
    utilisation_n integer not null default 0, utilisation_min real, utilisation_mean real, utilisation_max real,
    retries_n     integer not null default 0, retries_min     real, retries_mean     real, retries_max     real,
    primary key (device_id, number, day)
);

create table day_network (
    device_id  bigint not null,
    network_id integer not null,
    day        date not null,
    clients_n integer not null default 0, clients_min real, clients_mean real, clients_max real,
    primary key (device_id, network_id, day)
);

-- The ribbon of a site, one row a quarter hour, so that a page of sites need not visit every access point's quarters.
create table quarter_site (
    site_id          bigint not null,
    at               timestamptz not null,
    clients_mean     real,                                -- sum of the access points' means
    utilisation_max  real,                                -- highest quarter mean of any radio
    answering_s      integer not null default 0,          -- access-point seconds in each condition
    silent_s         integer not null default 0,
    refusing_s       integer not null default 0,
    covered_s        integer not null,                    -- access points x seconds of the quarter hour gone by
    primary key (site_id, at)
) partition by range (at);

-- Roll-ups that are due. The writer adds a mark for every bucket that it touched, in the same transaction.
create table rollup_mark (
    id      bigint generated always as identity primary key,
    quarter timestamptz not null
);

create table day_mark (
    site_id bigint not null,
    day     date not null,
    due_at  timestamptz not null,                         -- not before then: the current day is built now and then
    primary key (site_id, day)
);

-- Condition spans, the only basis of availability. to_at is null while the span goes on; it then reaches to the time
-- at which the device's next round is due (device_now.last_round_at + next_in_s) and no further.
create table span (
    device_id bigint not null,
    from_at   timestamptz not null,
    to_at     timestamptz,
    condition smallint not null,                          -- code of org.roundsman.measure.Condition
    outcome   smallint,                                   -- what the first round of the span met
    primary key (device_id, from_at),
    check (to_at is null or to_at > from_at)
);
create unique index span_open on span (device_id) where to_at is null;
create index span_closed on span (to_at) where to_at is not null;

-- The last round of each device, for the fleet view, and what finding spans must remember from round to round. The
-- figures are those of the last round that answered.
create table device_now (
    device_id           bigint primary key,
    last_round_at       timestamptz not null,
    last_answered_at    timestamptz,
    next_in_s           integer not null,
    outcome             smallint not null,
    condition           smallint not null,
    since               timestamptz not null,
    misses              smallint not null default 0,      -- unanswered rounds in a row, counted to three
    missing_since       timestamptz,                      -- the first of them
    missing_outcome     smallint,
    round_trip          real,
    uptime              double precision,
    cpu                 real,
    memory              real,
    clients             integer,
    port_speed          real,
    port_in             real,
    port_out            real,
    clock_offset        double precision,
    busiest_radio       smallint,
    busiest_utilisation real
) with (fillfactor = 60);

-- Quarters from raw_since on (null: all) are built anew from the raw readings. Of earlier ones the raw readings were
-- dropped or never there, so what arrives late only fills in where no figure stands.
create table readings_state (
    one       boolean primary key default true check (one),
    raw_since timestamptz
);
insert into readings_state default values;
