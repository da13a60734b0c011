-- Searching the audit: by words, and by each of its columns, always newest first.

-- Every sign but letters and digits parts words, so that 192.0.2.17 is found by 192.0.2 and ap-3.example by example.
create function audit_words(texts text, changes jsonb) returns tsvector language sql immutable parallel safe as $$
    select to_tsvector('simple'::regconfig, translate(
        left(texts || ' ' || coalesce(string_agg(concat_ws(' ', f ->> 'field', f ->> 'old', f ->> 'new'), ' '), ''), 50000),
        '!"#$%&''()*+,-./:;<=>?@[\]^_`{|}~', repeat(' ', 32)))
    from jsonb_array_elements(changes) as f
$$;

alter table audit_entry add column words tsvector generated always as (audit_words(
    actor || ' ' || token || ' ' || address || ' ' || action || ' ' || subject || ' ' || subject_name, changes)) stored;

create index audit_entry_words on audit_entry using gin (words);
create index audit_entry_actor on audit_entry (lower(actor), at desc, id desc);
create index audit_entry_action on audit_entry (action, at desc, id desc);
create index audit_entry_kind on audit_entry (subject, at desc, id desc);
create index audit_entry_customer on audit_entry (customer_id, at desc, id desc) where customer_id is not null;
drop index audit_entry_subject;
create index audit_entry_subject on audit_entry (subject, subject_id, at desc, id desc);
