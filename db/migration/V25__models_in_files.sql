-- Models come in and go out as files too.
alter table import_file
    drop constraint import_file_kind_check,
    add constraint import_file_kind_check check (kind in ('CUSTOMERS', 'SITES', 'MODELS', 'DEVICES', 'PURCHASES'));
