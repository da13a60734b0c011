-- The catalogue: what a model is, costs and is promised, and which firmware belongs on it.

-- A family of firmware: models that take the same releases, and how the versions of it are compared.
create table firmware_line (
    id         bigint generated always as identity primary key,
    name       text not null check (name <> ''),
    scheme     text not null default 'DOTTED' check (scheme in ('DOTTED', 'SEMANTIC', 'PATTERN')),
    pattern    text not null default '',                   -- regular expression whose groups are compared in turn; PATTERN only
    note       text not null default '',
    created_at timestamptz not null default now(),
    check ((scheme = 'PATTERN') = (pattern <> ''))
);
create unique index firmware_line_name_once on firmware_line (lower(name));

alter table model
    add column mount                  text not null default '',       -- what holds it: ceiling rail, wall plate, mast clamp, rack
    add column mains                  boolean not null default false, -- fed from the mains
    add column list_price             numeric check (list_price >= 0), -- of one piece, without tax; decimals as entered
    add column currency               text not null default '' check (currency ~ '^([A-Z]{3})?$'), -- ISO 4217
    add column firmware_line_id       bigint references firmware_line,
    add column terms_kind             text not null default ''
        check (terms_kind in ('', 'MONTHS', 'LIFETIME_AFTER_SALE', 'LIFETIME_OF_OWNER', 'NONE')),
    add column terms_from             text not null default ''
        check (terms_from in ('', 'PURCHASE', 'DELIVERY', 'INSTALLATION', 'FIRST_SEEN')),
    add column terms_months           smallint check (terms_months between 1 and 600),
    add column terms_service          text not null default '' check (terms_service in ('', 'ADVANCE', 'BENCH')),
    add column end_of_sale            date,                            -- last day on which the maker sells it
    add column end_of_sale_source     text not null default '',
    add column end_of_software        date,                            -- last day of firmware from the maker
    add column end_of_software_source text not null default '',
    add column end_of_support         date,                            -- last day of any help from the maker
    add column end_of_support_source  text not null default '',
    add column note                   text not null default '',
    add constraint model_priced check ((list_price is null) = (currency = '')),
    add constraint model_terms check (
        (terms_kind = 'MONTHS') = (terms_from <> '')
        and (terms_kind in ('MONTHS', 'LIFETIME_AFTER_SALE')) = (terms_months is not null)),
    add constraint model_fed check (not (mains and poe_class is not null));
create index model_firmware_line on model (firmware_line_id);
