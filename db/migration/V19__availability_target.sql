-- What was agreed for a site: for how much of its service hours in a month its Wi-Fi is to be there, in percent.
alter table site add column availability_target double precision not null default 99.5
    check (availability_target > 0 and availability_target <= 100);
