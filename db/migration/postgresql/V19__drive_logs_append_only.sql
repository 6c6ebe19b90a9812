do $$
declare
    name text;
begin
    foreach name in array array['drive_log_judgement', 'column_meaning']
    loop
        execute format('create trigger %I before update or delete on %I for each row execute function refuse_change()',
                       name || '_append_only', name);
        execute format('create trigger %I before truncate on %I for each statement execute function refuse_change()',
                       name || '_no_truncate', name);
    end loop;
end $$;
