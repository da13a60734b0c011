-- A site's days begin where its time zone says: when that is corrected, the days it has are built anew from their
-- quarter hours. The first day whose quarter hours are only partly kept any more stays as it was counted.
create function site_days_are_due() returns trigger language plpgsql as $$
declare
    first_at  timestamptz;
    last_at   timestamptz;
    first_day date;
    last_day  date;
begin
    select min(at), max(at) into first_at, last_at from quarter_site where site_id = new.id;
    if first_at is null then
        return null;
    end if;
    first_day := (first_at at time zone 'UTC')::date
                 + case when first_at >= new.created_at - interval '1 day' then -1 else 2 end;
    last_day := (last_at at time zone 'UTC')::date + 1;
    delete from day_device using device d where d.id = device_id and d.site_id = new.id and day between first_day and last_day;
    delete from day_radio using device d where d.id = device_id and d.site_id = new.id and day between first_day and last_day;
    delete from day_network using device d where d.id = device_id and d.site_id = new.id and day between first_day and last_day;
    insert into day_mark (site_id, day, due_at)
    select new.id, day::date, now() from generate_series(first_day, last_day, interval '1 day') as day
    on conflict (site_id, day) do update set due_at = excluded.due_at;
    return null;
end
$$;
create trigger site_days_are_due after update of time_zone on site
    for each row when (old.time_zone is distinct from new.time_zone) execute function site_days_are_due();
