-- The maps of a calibration file between which one selects. One row for each fuel that a map names; a map that names none
-- has one row without a fuel.
create table calibration_map (
    calibration_id uuid        not null references calibration (id),
    row_no         integer     not null,
    map_no         integer     not null,
    name           varchar(60) not null,
    fuel_id        uuid references part_spec (id),
    factory_fuel   boolean     not null,
    note_id        uuid references personal_data (id),
    primary key (calibration_id, row_no)
);
