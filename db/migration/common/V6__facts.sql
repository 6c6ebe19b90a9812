-- What happened to each car, one row a fact, next to its journal entry; typed, so that SQL can ask about it.
-- Append-only (triggers in the vendor folders).
create table fact (
    id             uuid                        not null primary key,
    vehicle_id     uuid                        not null references vehicle (id),
    seq            bigint                      not null,
    kind           varchar(40)                 not null,
    effective_at   timestamp(6) with time zone not null,
    recorded_at    timestamp(6) with time zone not null,
    recorded_by    uuid                        not null,
    category       varchar(40),
    position       varchar(60),
    action         varchar(20),
    part_spec_id   uuid references part_spec (id),
    ecu_hardware   varchar(64),
    calibration_id uuid references calibration (id),
    outcome        varchar(10),
    source         varchar(20),
    calid          varchar(200),
    cvn            varchar(200),
    file_sha256    varchar(64),
    -- what a striking-out strikes out, or the item that a sign-off closes
    target_id      uuid,
    basis          varchar(20),
    failed_checks  integer,
    constraint fact_place unique (vehicle_id, seq),
    constraint fact_journalled foreign key (vehicle_id, seq) references journal_entry (chain_id, seq),
    constraint fact_not_ahead check (effective_at <= recorded_at),
    constraint fact_clear_is_clear check (kind <> 'HANDED_OVER' or basis <> 'CLEAR' or failed_checks = 0),
    constraint fact_handover_whole check (kind <> 'HANDED_OVER' or basis is not null and failed_checks is not null),
    constraint fact_change_whole check (kind <> 'PART_CHANGED' or category is not null and action is not null),
    constraint fact_flash_whole check (kind <> 'FLASHED' or outcome is not null),
    constraint fact_void_whole check (kind <> 'VOIDED' or target_id is not null)
);
create index fact_part on fact (part_spec_id);
create index fact_calibration on fact (calibration_id);
create index fact_reading on fact (calid, cvn);
create index fact_file on fact (file_sha256);
create index fact_target on fact (target_id);
create index fact_handovers on fact (kind, effective_at);

create table inspection_line (
    fact_id      uuid        not null references fact (id),
    line_no      integer     not null,
    category     varchar(40) not null,
    position     varchar(60),
    state        varchar(10) not null,
    part_spec_id uuid references part_spec (id),
    primary key (fact_id, line_no),
    constraint inspection_line_whole check ((state = 'PART') = (part_spec_id is not null))
);
create index inspection_line_part on inspection_line (part_spec_id);
