-- Warranty: extended contracts, the evidence of purchases, and the private calendars of what ends when.

-- What a bought unit is, where no device tells: a spare, or one that left the fleet.
alter table purchase add column model_id bigint references model on delete set null;
create index purchase_model on purchase (model_id);

-- Cover that was bought on top of the maker's terms.
create table warranty_contract (
    id          bigint generated always as identity primary key,
    customer_id bigint not null references customer,
    number      text not null check (number <> ''),       -- unique per customer without regard to case
    supplier    text not null default '',
    service     text not null default '' check (service in ('', 'ADVANCE', 'BENCH')),
    begins_on   date not null,                            -- first day that is covered
    ends_on     date not null,                            -- last day that is covered
    note        text not null default '',
    made_at     timestamptz not null default now(),
    check (ends_on >= begins_on)
);
create unique index warranty_contract_number_once on warranty_contract (customer_id, lower(number));

-- The units of a contract by serial number, which a unit keeps wherever it stands; entered purchase or not.
create table contract_unit (
    contract_id bigint not null references warranty_contract on delete cascade,
    serial      text not null check (serial <> '')
);
create unique index contract_unit_once on contract_unit (contract_id, lower(serial));
create index contract_unit_serial on contract_unit (lower(serial));

-- What proves a purchase: an invoice or a delivery note, as a file.
create table evidence (
    id          bigint generated always as identity primary key,
    purchase_id bigint not null references purchase on delete cascade,
    name        text not null check (name <> ''),         -- as uploaded, without any path; for showing and saving only
    kind        text not null check (kind in ('PDF', 'PNG', 'JPEG')), -- by its first octets
    octets      integer not null check (octets between 1 and 5242880),
    sha256      bytea not null check (length(sha256) = 32),
    content     bytea not null,
    added_by    text not null,                            -- sign-in name
    added_at    timestamptz not null,
    check (octets = length(content))
);
create unique index evidence_once on evidence (purchase_id, sha256);

-- Private addresses of the calendar. The address itself is known to its holder only; we keep the SHA-256 of its secret.
create table calendar_address (
    id          bigint generated always as identity primary key,
    account_id  bigint not null references account on delete cascade,
    name        text not null check (name <> ''),
    hash        bytea not null unique check (length(hash) = 32),
    customer_id bigint references customer on delete cascade, -- null = every customer
    created_at  timestamptz not null,
    used_at     timestamptz,
    revoked_at  timestamptz
);
create unique index calendar_address_name_once on calendar_address (account_id, lower(name)) where revoked_at is null;
create index calendar_address_customer on calendar_address (customer_id);

-- What was told last of a customer's day, so that calendars learn when it changed (RFC 5545, 3.8.7).
create table calendar_day (
    customer_id bigint not null references customer on delete cascade,
    day         date not null,
    uid         uuid not null default gen_random_uuid(),
    sequence    integer not null default 0,
    digest      bytea not null check (length(digest) = 32), -- SHA-256 of the words of the event
    changed_at  timestamptz not null,
    primary key (customer_id, day)
);
