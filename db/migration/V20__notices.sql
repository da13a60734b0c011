-- What is told to whom: choices of people, threads (one of an alarm from its raise to its clear, however often it comes and
-- goes in between), and the outbox, from which messages are sent at least once.

-- How far the changes of alarms were read; moves in the transaction that stores what follows from them.
create table notice_cursor (
    one       boolean primary key default true check (one),
    change_id bigint not null default 0
);
insert into notice_cursor default values;

create table notice_person (
    account_id     bigint primary key references account on delete cascade,
    mail           boolean not null,
    mail_address   text not null,
    severity       smallint not null check (severity between 2 and 6), -- from this one: numbers of RFC 8632
    events         text not null,                                      -- names of org.roundsman.notices.NoticeEvent, with commas
    every_customer boolean not null,
    time_zone      text not null,
    hours          text not null,                                      -- lines such as Mon-Fri 08:00-18:00; empty = always
    digest         text not null check (digest in ('NONE', 'DAILY', 'WEEKLY')),
    digest_hour    smallint not null check (digest_hour between 0 and 23),
    digest_weekday smallint not null check (digest_weekday between 1 and 7),
    digest_until   timestamptz not null,                               -- end of what digests have told
    changed_at     timestamptz not null
);

create table notice_person_customer (
    account_id  bigint not null references notice_person on delete cascade,
    customer_id bigint not null references customer on delete cascade,
    primary key (account_id, customer_id)
);

create table notice_webhook (
    id         bigint generated always as identity primary key,
    account_id bigint not null references account on delete cascade,
    name       text not null check (name <> ''),
    url        text not null check (url <> ''),
    secret     bytea,                                                  -- sealed; null only within the transaction that makes it
    enabled    boolean not null default true,
    created_at timestamptz not null,
    secret_at  timestamptz not null
);
create unique index notice_webhook_name_once on notice_webhook (account_id, lower(name));

-- Who is told next when nobody acknowledges; the one without a customer is for all that have none of their own.
create table notice_chain (
    id            bigint generated always as identity primary key,
    customer_id   bigint unique nulls not distinct references customer on delete cascade,
    severity      smallint not null check (severity between 2 and 6),
    minutes       integer not null check (minutes between 1 and 1440),
    service_hours boolean not null
);

create table notice_chain_step (
    chain_id   bigint not null references notice_chain on delete cascade,
    step       smallint not null check (step >= 1),
    account_id bigint not null references account on delete cascade,
    primary key (chain_id, step, account_id)
);

create table notice_thread (
    id            bigint generated always as identity primary key,
    alarm_id      bigint not null,
    episode_id    bigint not null,            -- the latest
    raised_at     timestamptz not null,       -- first raise
    cleared_at    timestamptz,                -- last clear, while nothing was raised after it
    cleared_times integer not null default 0,
    told_at       timestamptz,                -- when it was first told, or would have been, had anybody wanted it
    told_severity smallint,
    escalations   integer not null default 0,
    escalated_at  timestamptz,
    over          boolean not null default false
);
create index notice_thread_open on notice_thread (alarm_id) where not over;

create table notice_outbox (
    id            bigint generated always as identity primary key,
    thread_id     bigint references notice_thread,
    kind          text not null,
    state_key     text not null,              -- which state it tells: raise, update-5, escalation-2, clear, digest-…
    account_id    bigint not null references account on delete cascade,
    channel       text not null,              -- mail, or webhook-<id>
    message_key   uuid not null unique default gen_random_uuid(), -- the same at every attempt
    severity      smallint not null,
    content       jsonb not null,
    state         text not null default 'WAITING' check (state in ('WAITING', 'SENT', 'SUMMED', 'DEAD', 'DISMISSED')),
    created_at    timestamptz not null,
    due_at        timestamptz not null,
    give_up_at    timestamptz not null,
    attempts      integer not null default 0,
    claimed_until timestamptz,
    maybe_sent    boolean not null default false, -- an attempt ended without our knowing how
    sent_at       timestamptz,
    failure       text not null default '',
    summary_id    bigint references notice_outbox,
    unique nulls not distinct (thread_id, state_key, account_id, channel)
);
create index notice_outbox_waiting on notice_outbox (due_at) where state = 'WAITING';
create index notice_outbox_sent on notice_outbox (account_id, channel, sent_at) where state = 'SENT';
create index notice_outbox_summary on notice_outbox (summary_id) where summary_id is not null;
create index notice_outbox_created on notice_outbox (created_at);
