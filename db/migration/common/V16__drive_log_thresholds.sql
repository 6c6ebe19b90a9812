-- From where on the drive-log check calls something normal, as canonical JSON, all of them in each version. Null in versions from
-- before they were policy: those mean the defaults.
alter table policy_fact add column drive_log_thresholds varchar(2000);
