-- Keys with which a person's own programs ask the API. The token itself is known to its holder only; we keep its SHA-256.
create table personal_token (
    id          bigint generated always as identity primary key,
    account_id  bigint not null references account on delete cascade,
    name        text not null check (name <> ''),
    hash        bytea not null unique check (length(hash) = 32),
    scopes      text not null check (scopes <> ''),           -- names of org.roundsman.people.TokenScope, with commas
    customer_id bigint references customer on delete cascade, -- the one customer it is narrowed to; null = as its person
    created_at  timestamptz not null,
    expires_at  timestamptz not null,
    revoked_at  timestamptz,
    used_at     timestamptz,                                  -- exact to about a minute
    used_from   text not null default '',                     -- address of that use
    check (expires_at > created_at)
);
create unique index personal_token_name_once on personal_token (account_id, lower(name)) where revoked_at is null;
create index personal_token_customer on personal_token (customer_id);
