create table calibration (
    id               uuid                        not null primary key references chain_head (chain_id),
    name             varchar(100)                not null,
    revision         varchar(40)                 not null,
    name_key         varchar(160)                not null,
    ecu_hardware     varchar(64)                 not null,
    calid            varchar(200),
    cvn              varchar(200),
    file_sha256      varchar(64),
    purpose          varchar(10)                 not null,
    limits           varchar(1000),
    assumes          text                        not null,
    boost_target_kpa double precision,
    note_id          uuid references personal_data (id),
    recorded_at      timestamp(6) with time zone not null,
    recorded_by      uuid                        not null,
    constraint calibration_name unique (name_key),
    constraint calibration_identified check (calid is not null and cvn is not null or file_sha256 is not null)
);
create index calibration_calid on calibration (calid, cvn);
create index calibration_file on calibration (file_sha256);

-- One row for each part that a line of coverage names; a line without parts has one row without a part.
create table calibration_coverage (
    calibration_id  uuid        not null references calibration (id),
    row_no          integer     not null,
    line_no         integer     not null,
    category        varchar(40) not null,
    position        varchar(60),
    part_spec_id    uuid references part_spec (id),
    factory_allowed boolean     not null,
    none_allowed    boolean     not null,
    primary key (calibration_id, row_no)
);

create table calibration_withdrawal (
    calibration_id uuid                        not null primary key references calibration (id),
    reason_id      uuid                        not null references personal_data (id),
    withdrawn_at   timestamp(6) with time zone not null,
    recorded_by    uuid                        not null
);
