-- When each report that was sent was last checked for later data. Its own row cannot say so, since it does not change any more.

create table report_check (
    report_id  bigint primary key references report on delete cascade,
    checked_at timestamptz not null
);
create index report_sent on report (sent_at) where state = 'SENT';
