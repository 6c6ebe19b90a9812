-- One car. What was recorded of it stands in its chain; plate, owner and the like are here as they are now.
create table vehicle (
    id              uuid                        not null primary key references chain_head (chain_id),
    vin             varchar(17),
    frame_number    varchar(40),
    description     varchar(200)                not null,
    engine          varchar(100),
    displacement_cc integer,
    cylinders       integer,
    baseline        varchar(10)                 not null,
    registered_ecu  varchar(64)                 not null,
    ecu_hardware    varchar(64)                 not null,
    factory_calid   varchar(64),
    factory_cvn     varchar(64),
    registered_km   integer,
    odometer_km     integer,
    plate_id        uuid references personal_data (id),
    owner_name_id   uuid references personal_data (id),
    owner_phone_id  uuid references personal_data (id),
    owner_email_id  uuid references personal_data (id),
    -- from when each of these holds, where it was ever amended: an amendment that comes late does not overwrite a newer one
    plate_since        timestamp(6) with time zone,
    owner_since        timestamp(6) with time zone,
    engine_since       timestamp(6) with time zone,
    displacement_since timestamp(6) with time zone,
    cylinders_since    timestamp(6) with time zone,
    -- place in the car's chain of the last change of these columns
    version         bigint                      not null,
    registered_at   timestamp(6) with time zone not null,
    constraint vehicle_vin unique (vin),
    constraint vehicle_frame_number unique (frame_number),
    constraint vehicle_named check (vin is not null or frame_number is not null)
);
