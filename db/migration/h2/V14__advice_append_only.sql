create trigger part_spec_benefit_note_append_only before update, delete on part_spec_benefit_note for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';
create trigger advice_append_only before update, delete on advice for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';
create trigger planned_work_append_only before update, delete on planned_work for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';
create trigger planned_work_dropped_append_only before update, delete on planned_work_dropped for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';
