-- Who may sign in, and who is signed in.

create table account (
    id              bigint generated always as identity primary key,
    name            text not null check (name <> ''),
    shown_name      text not null default '',
    role            text not null check (role in ('TECHNICIAN', 'ACCOUNT_MANAGER', 'OWNER', 'VIEWER')),
    customer_id     bigint references customer,           -- the one customer of a viewer
    password_hash   text not null,                        -- bcrypt
    must_change     boolean not null default false,
    disabled        boolean not null default false,
    failures        integer not null default 0,           -- wrong passwords since the last right one
    locked_until    timestamptz,
    created_at      timestamptz not null default now(),
    check ((role = 'VIEWER') = (customer_id is not null))
);
create unique index account_name_once on account (lower(name));

-- A session's token is known to the browser only; we keep its SHA-256.
create table sign_in (
    token_hash bytea primary key,
    account_id bigint not null references account on delete cascade,
    started_at timestamptz not null default now(),
    seen_at    timestamptz not null default now()
);
create index sign_in_account on sign_in (account_id);
