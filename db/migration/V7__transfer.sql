-- Import: purchase data, and the dry runs that wait to be applied.

-- What was bought, by serial number. A device may be named; when it leaves the fleet, the purchase stays.
create table purchase (
    id             bigint generated always as identity primary key,
    customer_id    bigint not null references customer,
    serial         text not null check (serial <> ''),    -- as the maker wrote it; unique per customer without regard to case
    site_id        bigint references site on delete set null,
    device_id      bigint references device on delete set null,
    supplier       text not null default '',
    order_number   text not null default '',
    invoice_number text not null default '',
    bought_on      date,
    delivered_on   date,
    installed_on   date,
    price          numeric check (price >= 0),            -- of this one piece, without tax; its decimals are kept as entered
    currency       text not null default '' check (currency ~ '^([A-Z]{3})?$'), -- ISO 4217
    note           text not null default '',
    created_at     timestamptz not null default now(),
    check ((price is null) = (currency = ''))
);
create unique index purchase_serial_once on purchase (customer_id, lower(serial));
create index purchase_device on purchase (device_id);
create index purchase_site on purchase (site_id);

-- One upload with its dry run. Belongs to the account that made it; removed a day after it was made.
create table import_run (
    id          bigint generated always as identity primary key,
    account_id  bigint not null references account on delete cascade,
    started_at  timestamptz not null,
    finished_at timestamptz,
    state       text not null check (state in ('CHECKING', 'CHECKED', 'APPLYING', 'APPLIED', 'FAILED')),
    remark      text not null default '',                 -- what a person should know of this state
    moved       integer not null default 0                -- rows that came out differently than in the dry run before
);
create index import_run_of on import_run (account_id, started_at desc);

create table import_file (
    run_id     bigint not null references import_run on delete cascade,
    number     smallint not null,
    name       text not null,                             -- as uploaded, without any path; for showing only
    kind       text not null check (kind in ('CUSTOMERS', 'SITES', 'DEVICES', 'PURCHASES')),
    encoding   text not null,
    delimiter  text not null,
    data_rows  integer not null,
    primary key (run_id, number)
);

create table import_row (
    run_id  bigint not null references import_run on delete cascade,
    number  integer not null,                             -- order in the run
    file    smallint not null,
    line    integer not null,                             -- row of the file; the header is row 1
    name    text not null,                                -- what the row is about
    cells   jsonb not null,                               -- [[column, text], …], as read
    misread jsonb not null default '[]',                  -- [[column, reason], …]: faults of the file itself, not of the fleet
    outcome text not null check (outcome in ('NEW', 'CHANGED', 'SAME', 'REFUSED')),
    changes jsonb not null default '[]',                  -- [{"field": …, "old": …, "fresh": …}]
    faults  jsonb not null default '[]',                  -- [[column, reason], …]
    moved   boolean not null default false,               -- came out differently than in the dry run before
    primary key (run_id, number)
);
create index import_row_outcome on import_row (run_id, outcome, number);
