-- What the shop asks for, each version dated; none at all means the defaults.
create table policy_fact (
    id                       uuid                        not null primary key,
    read_back_required       boolean                     not null,
    read_back_max_age_hours  integer                     not null check (read_back_max_age_hours > 0),
    drive_log_required       boolean                     not null,
    acknowledgement_required boolean                     not null,
    second_person_required   boolean                     not null,
    effective_at             timestamp(6) with time zone not null,
    recorded_at              timestamp(6) with time zone not null,
    recorded_by              uuid                        not null
);

-- The work that follows from a car's record. What opened and closed an item stands in the car's chain; this is the list
-- that people work from. One open item a car: an index in the vendor folders.
create table retune_item (
    id          uuid                        not null primary key,
    vehicle_id  uuid                        not null references vehicle (id),
    opened_at   timestamp(6) with time zone not null,
    risk        varchar(10)                 not null,
    cleared_at  timestamp(6) with time zone,
    basis       varchar(20),
    assignee_id uuid references personal_data (id),
    promised_at timestamp(6) with time zone,
    note_id     uuid references personal_data (id),
    version     bigint                      not null,
    constraint retune_item_closed_whole check ((cleared_at is null) = (basis is null))
);
create index retune_item_vehicle on retune_item (vehicle_id);
create index retune_item_open on retune_item (cleared_at, id);

create table retune_cause (
    item_id      uuid                        not null references retune_item (id),
    code         varchar(40)                 not null,
    record_id    uuid                        not null,
    effective_at timestamp(6) with time zone not null,
    recorded_at  timestamp(6) with time zone not null,
    primary key (item_id, code, record_id)
);

-- Work that a withdrawal, a correction or a move of a category leaves to be done car by car; a start takes it up again.
create table follow_up (
    id         uuid                        not null primary key,
    kind       varchar(30)                 not null,
    subject_id uuid                        not null,
    asked_by   uuid                        not null,
    created_at timestamp(6) with time zone not null,
    done_at    timestamp(6) with time zone
);
create index follow_up_open on follow_up (done_at, created_at);

alter table chain_head add constraint chain_head_open_item foreign key (open_item_id) references retune_item (id);
