create trigger calibration_map_append_only before update, delete on calibration_map for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';
