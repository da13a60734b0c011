-- UTC days of the invented history that are stored; a back-fill that was cut short goes on with the others.
create table demo_history (
    day date primary key
);

-- Which invented fleet this database holds: another size or another number would be another fleet.
create table demo_fleet (
    one           boolean primary key default true check (one),
    access_points integer not null,
    seed          bigint not null
);
