create trigger journal_entry_append_only before update, delete on journal_entry for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';
create trigger fact_append_only before update, delete on fact for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';
create trigger inspection_line_append_only before update, delete on inspection_line for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';
create trigger part_spec_append_only before update, delete on part_spec for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';
create trigger part_spec_correction_append_only before update, delete on part_spec_correction for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';
create trigger category_move_append_only before update, delete on category_move for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';
create trigger calibration_append_only before update, delete on calibration for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';
create trigger calibration_coverage_append_only before update, delete on calibration_coverage for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';
create trigger calibration_withdrawal_append_only before update, delete on calibration_withdrawal for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';
create trigger policy_fact_append_only before update, delete on policy_fact for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';
create trigger retune_cause_append_only before update, delete on retune_cause for each row
    call 'org.bayhold.journal.AppendOnlyTrigger';

-- H2 has no partial index: a column that is the car while the item is open, and null afterwards
alter table retune_item add column open_vehicle_id uuid
    generated always as (case when cleared_at is null then vehicle_id end);
alter table retune_item add constraint retune_item_one_open unique (open_vehicle_id);

create trigger fact_clear_needs_no_open_item before insert on fact for each row
    call 'org.bayhold.journal.ClearHandoverTrigger';
