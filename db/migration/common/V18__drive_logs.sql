-- A judged drive: target_id is the record of its first judgement, where it was judged again, and file_sha256 that of the
-- file that was uploaded. map_name: which of the calibration's maps was driven, where they have names.
alter table fact add column map_name varchar(60);
alter table fact add column verdict varchar(20);
alter table fact add column risk varchar(10);
alter table fact add constraint fact_drive_log_whole
    check (kind <> 'DRIVE_LOGGED' or verdict is not null and risk is not null and file_sha256 is not null);

-- What a drive showed, whole; its SHA-256 stands in the journal. Append-only (triggers in the vendor folders).
create table drive_log_judgement (
    fact_id uuid        not null primary key references fact (id),
    sha256  varchar(64) not null,
    body    text        not null
);

-- What a column of a log holds, as the shop says; the last word on a name counts. Append-only as well.
create table column_meaning (
    id          uuid                        not null primary key,
    name        varchar(200)                not null,
    parameter   varchar(40),
    unit        varchar(40),
    recorded_at timestamp(6) with time zone not null,
    recorded_by uuid                        not null
);
create index column_meaning_name on column_meaning (name);
