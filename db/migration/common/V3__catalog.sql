create table part_spec (
    id              uuid                        not null primary key references chain_head (chain_id),
    category        varchar(40)                 not null,
    maker           varchar(100)                not null,
    part_number     varchar(100)                not null,
    spec_revision   varchar(40)                 not null,
    -- maker, number and revision without regard to case: the part's name in the world
    name_key        varchar(260)                not null,
    attributes      text                        not null,
    compliance_note varchar(500),
    recorded_at     timestamp(6) with time zone not null,
    recorded_by     uuid                        not null,
    constraint part_spec_name unique (name_key)
);
create index part_spec_category on part_spec (category, id);

create table part_spec_correction (
    id           uuid                        not null primary key,
    part_spec_id uuid                        not null references part_spec (id),
    attributes   text                        not null,
    reason_id    uuid                        not null references personal_data (id),
    recorded_at  timestamp(6) with time zone not null,
    recorded_by  uuid                        not null
);
create index part_spec_correction_spec on part_spec_correction (part_spec_id);

-- A category moved to NO_EFFECT, or back.
create table category_move (
    id           uuid                        not null primary key,
    category     varchar(40)                 not null,
    no_effect    boolean                     not null,
    reason_id    uuid                        not null references personal_data (id),
    effective_at timestamp(6) with time zone not null,
    recorded_at  timestamp(6) with time zone not null,
    recorded_by  uuid                        not null
);
