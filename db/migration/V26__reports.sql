-- Reports of a customer's month: plans, how they look, the reports themselves, their mails, and links to them.

create table report_plan (
    customer_id bigint primary key references customer,
    active      boolean not null,
    day         smallint not null check (day between 1 and 28),
    hour        smallint not null check (hour between 0 and 23), -- of the clock in time_zone
    time_zone   text not null,
    language    text not null,                            -- BCP 47 tag
    paper       text not null check (paper in ('A4', 'LETTER')),
    recipients  text[] not null default '{}',
    approval    boolean not null,
    costs       boolean not null,
    keep_months smallint not null check (keep_months between 6 and 120),
    next_month  date check (extract(day from next_month) = 1), -- first day of the month that is built next; null while not active
    changed_at  timestamptz not null,
    check (active = (next_month is not null))
);

-- How somebody presents themselves. A row never changes: a report keeps the one that it was sent with.
create table report_brand (
    id          bigint generated always as identity primary key,
    customer_id bigint references customer,               -- null = the firm itself
    name        text not null check (name <> ''),
    colour      text not null default '' check (colour = '' or colour ~ '^#[0-9a-f]{6}$'),
    logo        bytea check (length(logo) between 1 and 262144),
    logo_type   text not null default '' check (logo_type in ('', 'image/png', 'image/jpeg')),
    lines       text[] not null default '{}',
    made_at     timestamptz not null,
    replaced_at timestamptz,                              -- null for the one that is used today
    check ((logo is null) = (logo_type = ''))
);
create unique index report_brand_now on report_brand (coalesce(customer_id, 0)) where replaced_at is null;

create table report (
    id             bigint generated always as identity primary key,
    customer_id    bigint not null references customer,
    from_on        date not null,                         -- first day
    to_on          date not null,                         -- the day after the last one
    revision       integer not null check (revision >= 1),
    state          text not null check (state in ('WAITING', 'BUILDING', 'TO_REVIEW', 'REVIEWED', 'SENDING', 'SENT', 'FAILED')),
    language       text not null,                         -- BCP 47 tag
    paper          text not null check (paper in ('A4', 'LETTER')),
    costs          boolean not null,
    remark         text not null default '',
    why            text not null default '',              -- what a later revision was made for
    failure        text not null default '',
    queued_at      timestamptz not null,
    claim          uuid,                                  -- of the one attempt that may store what it builds
    as_of          timestamptz,                           -- the moment for which the figures hold
    built_at       timestamptz,
    figures        bytea,                                 -- JSON
    figures_sha256 text not null default '',
    observed       text not null default '',              -- SHA-256 over what later data can change
    reviewed_by    text not null default '',              -- sign-in name
    reviewed_at    timestamptz,
    settled_at     timestamptz,                           -- when how it looks was settled: stands on the last page
    firm_brand     bigint references report_brand,
    customer_brand bigint references report_brand,
    pdf            bytea,
    pdf_sha256     text not null default '',
    file_name      text not null default '',
    sent_at        timestamptz,
    unique (customer_id, from_on, to_on, revision),
    check (from_on < to_on),
    check (state <> 'BUILDING' or claim is not null),
    check ((figures is null) = (figures_sha256 = '') and (figures is null) = (observed = '')),
    check ((pdf is null) = (pdf_sha256 = '')),
    check (state not in ('TO_REVIEW', 'REVIEWED', 'SENDING', 'SENT') or figures is not null),
    check (state not in ('SENDING', 'SENT')
        or (settled_at is not null and firm_brand is not null and customer_brand is not null)),
    check ((state = 'SENT') = (sent_at is not null)),
    check (state <> 'SENT' or pdf is not null)
);
create index report_queue on report (queued_at, id) where state = 'WAITING';
create index report_unprinted on report (settled_at, id) where state = 'SENDING' and pdf is null;
create index report_days on report (from_on, to_on);
create index report_firm_brand on report (firm_brand);
create index report_customer_brand on report (customer_brand);

-- A report that was sent is the same document for ever: it may be removed as a whole when its time is over, and never changed.
create function report_stays_as_sent() returns trigger language plpgsql as $$
begin
    raise exception 'report % was sent and does not change any more', old.id using errcode = 'integrity_constraint_violation';
end $$;
create trigger report_stays_as_sent before update on report
    for each row when (old.state = 'SENT') execute function report_stays_as_sent();

create function report_brand_stays() returns trigger language plpgsql as $$
begin
    raise exception 'the brand % does not change; another takes its place', old.id using errcode = 'integrity_constraint_violation';
end $$;
create trigger report_brand_stays before update on report_brand
    for each row when ((old.customer_id, old.name, old.colour, old.logo, old.logo_type, old.lines, old.made_at)
        is distinct from (new.customer_id, new.name, new.colour, new.logo, new.logo_type, new.lines, new.made_at))
    execute function report_brand_stays();

-- One mail to one recipient.
create table report_mail (
    id            bigint generated always as identity primary key,
    report_id     bigint not null references report on delete cascade,
    recipient     text not null check (recipient <> ''),
    message_key   uuid not null unique default gen_random_uuid(), -- makes the Message-ID: the same at every attempt
    state         text not null default 'WAITING' check (state in ('WAITING', 'SENT', 'FAILED', 'BOUNCED')),
    made_at       timestamptz not null,
    due_at        timestamptz not null,
    give_up_at    timestamptz not null,
    attempts      integer not null default 0,
    claimed_until timestamptz,
    maybe_sent    boolean not null default false,         -- an attempt ended without our knowing how
    sent_at       timestamptz,
    why           text not null default ''                -- what went wrong, or came back
);
create index report_mail_of on report_mail (report_id, id);
create index report_mail_waiting on report_mail (due_at) where state = 'WAITING';

-- Links that open a report without a sign-in. The link itself is known to its holder only; we keep the SHA-256 of its secret.
create table report_link (
    id         bigint generated always as identity primary key,
    report_id  bigint not null references report on delete cascade,
    hash       bytea not null unique check (length(hash) = 32),
    made_at    timestamptz not null,
    made_by    text not null,                             -- sign-in name
    until_at   timestamptz not null,
    revoked_at timestamptz,
    opened     integer not null default 0,
    opened_at  timestamptz,                               -- the last time
    check (until_at > made_at and until_at <= made_at + interval '91 days')
);
create index report_link_of on report_link (report_id, id);
