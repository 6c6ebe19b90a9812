create trigger drive_log_judgement_append_only before update, delete on drive_log_judgement for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';
create trigger column_meaning_append_only before update, delete on column_meaning for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';
