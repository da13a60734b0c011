-- Who changed what, when and from where. Rows are added and never changed: triggers refuse anything else.
create table audit_entry (
    id           bigint generated always as identity primary key,
    at           timestamptz not null,
    actor        text not null check (actor <> ''),       -- sign-in name, or roundsman where nobody stands behind it
    account_id   bigint,                                  -- null where nobody stands behind it
    via          text not null check (via in ('PAGE', 'API', 'COMMAND', 'ITSELF')),
    token        text not null default '',                -- name of the personal token, with via API
    address      text not null default '',                -- where the request came from; empty where none did
    action       text not null check (action <> ''),      -- past tense, such as added, changed, removed
    subject      text not null check (subject <> ''),     -- such as device, site, credential
    subject_id   bigint,
    subject_name text not null default '',
    customer_id  bigint,                                  -- whose data was changed; null = nobody's in particular
    changes      jsonb not null default '[]'              -- [{"field": …, "old": …, "new": …}], never a secret
);
create index audit_entry_time on audit_entry (at desc, id desc);
create index audit_entry_subject on audit_entry (subject, subject_id);

create function audit_entry_stays() returns trigger language plpgsql as $$
begin
    raise exception 'entries of the audit are never changed or deleted';
end
$$;
create trigger audit_entry_stays before update or delete on audit_entry
    for each row execute function audit_entry_stays();
create trigger audit_entry_is_not_emptied before truncate on audit_entry
    for each statement execute function audit_entry_stays();
