-- In which units pages show a person figures; what is recorded stays in SI.
alter table app_user add column units varchar(16) default 'METRIC' not null;
