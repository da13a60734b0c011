-- UTC days of the invented history that are stored; a back-fill that was cut short goes on with the others.
create table demo_history (
    day date primary key
);
