create function refuse_change() returns trigger language plpgsql as $$
begin
    raise exception 'table % is append-only', tg_table_name using errcode = '23514';
end $$;

do $$
declare
    name text;
begin
    foreach name in array array['journal_entry', 'fact', 'inspection_line', 'part_spec', 'part_spec_correction',
        'category_move', 'calibration', 'calibration_coverage', 'calibration_withdrawal', 'policy_fact', 'retune_cause']
    loop
        execute format('create trigger %I before update or delete on %I for each row execute function refuse_change()',
                       name || '_append_only', name);
        execute format('create trigger %I before truncate on %I for each statement execute function refuse_change()',
                       name || '_no_truncate', name);
    end loop;
end $$;

create unique index retune_item_one_open on retune_item (vehicle_id) where cleared_at is null;

create function refuse_clear_while_open() returns trigger language plpgsql as $$
begin
    if exists (select 1 from retune_item i where i.vehicle_id = new.vehicle_id and i.cleared_at is null) then
        raise exception 'no CLEAR handover while a retune item is open' using errcode = '23514';
    end if;
    return new;
end $$;

create trigger fact_clear_needs_no_open_item before insert on fact for each row
    when (new.kind = 'HANDED_OVER' and new.basis = 'CLEAR') execute function refuse_clear_while_open();
