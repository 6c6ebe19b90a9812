-- The part that came before in its maker's list: a link for whoever searches, never coverage.
alter table part_spec add column supersedes uuid references part_spec (id);
create index part_spec_supersedes on part_spec (supersedes);

-- What the shop has learnt of a part on some cars: that it brings nothing there, or harms.
create table part_spec_benefit_note (
    id           uuid                        not null primary key,
    part_spec_id uuid                        not null references part_spec (id),
    effect       varchar(20)                 not null,
    engine       varchar(100),
    ecu_hardware varchar(64),
    note         varchar(500)                not null,
    recorded_at  timestamp(6) with time zone not null,
    recorded_by  uuid                        not null
);
create index part_spec_benefit_note_spec on part_spec_benefit_note (part_spec_id);

-- Answers to "may I run this part with my calibration?". No fact of any car: each is a chain of its own.
create table advice (
    id          uuid                        not null primary key references chain_head (chain_id),
    -- null for a car that is not in the register
    vehicle_id  uuid references vehicle (id),
    -- what it is found by, in lower case
    words       varchar(4000)               not null,
    body        text                        not null,
    question_id uuid references personal_data (id),
    asked_by_id uuid references personal_data (id),
    recorded_at timestamp(6) with time zone not null,
    recorded_by uuid                        not null
);
create index advice_vehicle on advice (vehicle_id, id);

-- An answer that became work to be done on its car, until it is dropped or the car carries the parts.
create table planned_work (
    id          uuid                        not null primary key,
    advice_id   uuid                        not null references advice (id),
    vehicle_id  uuid                        not null references vehicle (id),
    recorded_at timestamp(6) with time zone not null,
    recorded_by uuid                        not null
);
create index planned_work_vehicle on planned_work (vehicle_id);
create index planned_work_advice on planned_work (advice_id);

create table planned_work_dropped (
    planned_work_id uuid                        not null primary key references planned_work (id),
    id              uuid                        not null unique,
    advice_id       uuid                        not null references advice (id),
    recorded_at     timestamp(6) with time zone not null,
    recorded_by     uuid                        not null
);
