create trigger calibration_map_append_only before update or delete on calibration_map for each row
    execute function refuse_change();
create trigger calibration_map_no_truncate before truncate on calibration_map for each statement
    execute function refuse_change();
